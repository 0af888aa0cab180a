/** What each outcome of a reading would say, the likeliest first. */
import type { NextStep } from "@loomwright/engine";
import { count, percent } from "../../shared/words.js";

type Outcome = NextStep["outcomes"][number];

/** Outcomes rarer than this are folded away. */
const RARE = 0.02;
const MOST = 5;

export function Outcomes({ outcomes }: { outcomes: readonly Outcome[] }) {
	if (outcomes.length === 0) return null;
	const sorted = [...outcomes].sort((a, b) => b.chance - a.chance);
	const shown = sorted.filter(({ chance }, k) => k < MOST && (chance >= RARE || k === 0));
	const rest = sorted.slice(shown.length);
	return (
		<section className="stack" aria-label="What each outcome would say">
			<OutcomeList outcomes={shown} />
			{rest.length > 0 && (
				<details className="fold">
					<summary>{count(rest.length, "less likely outcome")}</summary>
					<OutcomeList outcomes={rest} />
				</details>
			)}
		</section>
	);
}

const OutcomeList = ({ outcomes }: { outcomes: readonly Outcome[] }) => (
	<ul className="outcomes">
		{outcomes.map(({ text, chance, favours }) => (
			<li key={text}>
				<strong className="cap">{text}</strong>
				<span className="share-number">{percent(chance)}</span>
				<span className="soft">would speak for: {favours}</span>
				<span className="share-bar" aria-hidden="true">
					<span style={{ width: `${100 * chance}%` }} />
				</span>
			</li>
		))}
	</ul>
);
