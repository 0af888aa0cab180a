/** What to do rather than to measure: plugs and relays to reseat, wiggle or swap, and what came of it. */
import type { Found, NextAction } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { duration } from "../../shared/words.js";
import type { Act } from "./acts.js";
import type { Case } from "./use-case.js";

const SHOWN = 3;

interface Outcome {
	readonly label: string;
	readonly means: string;
	readonly act: (part: string) => Act;
}

const reseated = (what: string): Act => ({ kind: "reseated", body: { what } });

/** What is entered once it was done. */
const CAME_OF_IT: Readonly<Record<NextAction["kind"], readonly Outcome[]>> = {
	reseat: [{ label: "It was reseated", means: "was reseated", act: reseated }],
	wiggle: [{ label: "It was wiggled", means: "was wiggled", act: reseated }],
	swap: [
		{
			label: "Fault goes with it",
			means: "takes the fault along",
			act: (part) => ({ kind: "bench", body: { part, good: false } }),
		},
		{
			label: "Fault stays",
			means: "leaves the fault where it was",
			act: (part) => ({ kind: "bench", body: { part, good: true } }),
		},
		{ label: "Fault is gone", means: "was reseated by the swap", act: reseated },
	],
};

export function Actions({ found, shown }: { found: Found; shown: Case }) {
	if (found.actions.length === 0) return null;
	return (
		<section className="card stack" aria-label="Worth reseating">
			<h2>Or do this</h2>
			<p className="soft">
				{shown.proving === "battery off"
					? "Read the rows that were not right once more afterwards"
					: "Read the codes and look again afterwards"}
				: a change tells where the bad contact is.
			</p>
			<ul className="row-list">
				{found.actions.slice(0, SHOWN).map(({ kind, part, text, because, place, minutes }) => (
					<li key={`${kind} ${part}`} className="row form-row">
						<span className="row-main">
							<strong className="cap">{text}</strong>
							<span className="cap">{because}</span>
							<span className="soft">{[place, duration(minutes)].filter(Boolean).join(", ")}</span>
						</span>
						<span className="stack">
							{CAME_OF_IT[kind].map(({ label, means, act }) => (
								<Button
									key={label}
									variant="default"
									aria-label={`${part} ${means}`}
									onClick={() => shown.add(act(part))}
								>
									{label}
								</Button>
							))}
						</span>
					</li>
				))}
			</ul>
		</section>
	);
}
