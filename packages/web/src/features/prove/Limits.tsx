/** What no reading before power shows, by why. */
import type { Miss, ProveSheet } from "@loomwright/engine";
import { amount, count, percent } from "../../shared/words.js";

/** Shown of each reason before the rest is asked for. */
const SHOWN = 5;

export function Limits({ sheet }: { sheet: ProveSheet }) {
	const { faults, detectable, caught } = sheet.coverage;
	const reasons = new Map<string, Miss[]>();
	for (const miss of sheet.missed) reasons.set(miss.reason, [...(reasons.get(miss.reason) ?? []), miss]);
	return (
		<section className="card stack">
			<h2>
				The sheet shows {caught} of {faults} single mistakes
			</h2>
			<p>
				Some reading before power would show {detectable} of them; this sheet shows{" "}
				{percent(detectable === 0 ? 1 : caught / detectable)} of those in {count(sheet.readings, "reading")}.{" "}
				{sheet.readings === sheet.lowerBound
					? "No fewer readings of those that can be taken would do."
					: `At least ${sheet.lowerBound} are needed.`}{" "}
				A poor connection counts from {amount(sheet.leastOhms, "ohm")} on. The power-up, the codes and your
				eyes must show the rest:
			</p>
			{[...reasons].map(([reason, misses]) => (
				<section key={reason} className="stack">
					<h3>
						{misses.length}: <span>{reason}</span>
					</h3>
					<p className="soft">{misses[0]!.why}</p>
					<MissList misses={misses.slice(0, SHOWN)} />
					{misses.length > SHOWN && (
						<details className="fold">
							<summary>{count(misses.length - SHOWN, "more", "more")}</summary>
							<MissList misses={misses.slice(SHOWN)} />
						</details>
					)}
				</section>
			))}
		</section>
	);
}

const MissList = ({ misses }: { misses: readonly Miss[] }) => (
	<ul className="bullets">
		{misses.map(({ id, where, only, caughtFrom }) => (
			<li key={id}>
				{where}
				{only.length > 0 && `; only ${only.join(", ")}`}
				{caughtFrom !== undefined && `; caught from ${amount(caughtFrom, "ohm")} on`}
			</li>
		))}
	</ul>
);
