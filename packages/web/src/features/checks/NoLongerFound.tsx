/** Acceptances of what no rule finds any more. */
import type { FindingAcceptance } from "../../server/types.js";
import { count } from "../../shared/words.js";
import { AcceptanceWords, Withdraw } from "./Accepted.js";

export function NoLongerFound({ gone }: { gone: readonly FindingAcceptance[] }) {
	if (gone.length === 0) return null;
	return (
		<details className="fold">
			<summary>{count(gone.length, "acceptance")} of what is no longer found</summary>
			<ul className="stack">
				{gone.map((acceptance) => (
					<li key={acceptance.entry} className="panel stack">
						<h2 className="cap">{acceptance.finding.rule.replaceAll("-", " ")}</h2>
						<p>
							{acceptance.finding.where}. {acceptance.finding.why}
						</p>
						<AcceptanceWords acceptance={acceptance} />
						<Withdraw acceptance={acceptance} />
					</li>
				))}
			</ul>
		</details>
	);
}
