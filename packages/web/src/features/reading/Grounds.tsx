/** What widens a reading's band, largest share first. */
import type { Reading } from "@loomwright/engine";
import { percent } from "../../shared/words.js";

export function Grounds({ grounds }: { grounds: Reading["grounds"] }) {
	if (grounds.length === 0) return null;
	return (
		<>
			<h3>What the band comes from</h3>
			<ul className="shares">
				{grounds.map(({ text, share }) => (
					<li key={text}>
						<span>{text}</span>
						<span className="share-bar" aria-hidden="true">
							<span style={{ width: `${100 * share}%` }} />
						</span>
						<span className="share-number">{percent(share)}</span>
					</li>
				))}
			</ul>
		</>
	);
}
