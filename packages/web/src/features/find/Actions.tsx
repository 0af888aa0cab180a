/** Connectors and relays worth taking off and putting back; what is seen after it counts as a new occasion. */
import type { Found } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { duration } from "../../shared/words.js";
import type { Case } from "./use-case.js";

const SHOWN = 3;

export function Actions({ found, shown }: { found: Found; shown: Case }) {
	if (found.actions.length === 0) return null;
	return (
		<section className="card stack" aria-label="Worth reseating">
			<h2>Or take off and put back</h2>
			<p className="soft">
				{shown.proving === "battery off"
					? "Read the rows that were not right once more afterwards"
					: "Read the codes and look again afterwards"}
				: a change tells where the bad contact is.
			</p>
			<ul className="row-list">
				{found.actions.slice(0, SHOWN).map(({ part, text, because, place, minutes }) => (
					<li key={part} className="row form-row">
						<span className="row-main">
							<strong className="cap">{text}</strong>
							<span className="cap">{because}</span>
							<span className="soft">{[place, duration(minutes)].filter(Boolean).join(", ")}</span>
						</span>
						<Button
							variant="default"
							aria-label={`${part} was reseated`}
							onClick={() => shown.add({ kind: "reseated", body: { what: part } })}
						>
							It was reseated
						</Button>
					</li>
				))}
			</ul>
		</section>
	);
}
