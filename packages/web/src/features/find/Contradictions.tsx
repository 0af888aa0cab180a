/** What no considered fault explains. */
import type { Found } from "@loomwright/engine";
import { useCar } from "../../app/car.js";
import { whensOf } from "./acts.js";
import { plainConditions } from "./condition-words.js";
import type { Case } from "./use-case.js";

export function Contradictions({ found, shown }: { found: Found; shown: Case }) {
	const loom = useCar().car[shown.which];
	const lines = found.contradictions.map((line) => plainConditions(line, loom, whensOf(shown.acts)));
	if (lines.length === 0) return null;
	return (
		<section className="notice stack" data-tone="warn">
			<h2>This does not fit together</h2>
			<ul>
				{lines.map((line) => (
					<li key={line}>{line}</li>
				))}
			</ul>
		</section>
	);
}
