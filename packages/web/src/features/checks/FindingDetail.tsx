/** One finding: where, why, what mends it, what to mind, who accepted it, and its path drawn. */
import type { Which } from "@loomwright/engine";
import { Drawing } from "../../drawing/view/Drawing.js";
import { Cautions } from "../../shared/Cautions.js";
import { Accepted } from "./Accepted.js";
import { severityOf } from "./severity.js";
import type { FoundAndAccepted } from "./use-acceptances.js";

export function FindingDetail({ found, which }: { found: FoundAndAccepted; which: Which }) {
	const { finding } = found.grounded;
	const { word, meaning } = severityOf(finding.severity);
	return (
		<article className="finding stack">
			<p className="finding-severity">
				<span className="tag" data-tone={finding.severity}>
					{word}
				</span>{" "}
				{meaning}
			</p>
			<h2 className="cap">{finding.where}</h2>
			<dl className="reasons">
				<div>
					<dt>Why</dt>
					<dd>{finding.why}</dd>
				</div>
				<div>
					<dt>What mends it</dt>
					<dd>{finding.mend}</dd>
				</div>
			</dl>
			<Cautions cautions={finding.cautions} />
			<Accepted of={found} />
			<Drawing which={which} path={finding.path} />
		</article>
	);
}
