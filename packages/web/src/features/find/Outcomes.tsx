/** What each outcome of a reading would say. */
import type { NextStep } from "@loomwright/engine";
import { percent } from "../../shared/words.js";

export function Outcomes({ outcomes }: { outcomes: NextStep["outcomes"] }) {
	if (outcomes.length === 0) return null;
	return (
		<ul className="outcomes" aria-label="What each outcome would say">
			{outcomes.map(({ text, chance, favours }) => (
				<li key={text}>
					<strong className="cap">{text}</strong>
					<span>speaks for: {favours}</span>
					<span className="share-number">{percent(chance)}</span>
					<span className="share-bar" aria-hidden="true">
						<span style={{ width: `${100 * chance}%` }} />
					</span>
				</li>
			))}
		</ul>
	);
}
