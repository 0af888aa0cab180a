/** What the rules find in a loom: gravest first, each with its path drawn. */
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { useFindings } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { LoomChoice } from "../../shared/LoomChoice.js";
import { Working } from "../../shared/Working.js";
import { count } from "../../shared/words.js";
import { FindingDetail } from "./FindingDetail.js";
import { NoLongerFound } from "./NoLongerFound.js";
import { SEVERITIES, severityOf } from "./severity.js";
import { useAcceptances } from "./use-acceptances.js";

export function Checks() {
	const { misfits } = useCar().car;
	const [query, set] = useSettings();
	const which = whichOf(query);
	const findings = useFindings(which);
	const chosen = query.get("finding") ?? "";
	const { found, gone } = useAcceptances(which);
	const open = found[Number(chosen) - 1];
	const accepted = found.filter((one) => one.accepted).length;
	return (
		<div className="page">
			<div className="page-head">
				<h1>Checks</h1>
				<LoomChoice value={which} onChange={(loom) => set({ loom, finding: "" })} />
			</div>
			{misfits.length > 0 && which === "converted" && (
				<p className="notice stack" data-tone="warn">
					{count(misfits.length, "step")} of the recipe could not be applied, so the converted loom is not
					whole. See Changes.
				</p>
			)}
			{findings.error ? (
				<FaultNotice title="The rules cannot be run" error={findings.error} />
			) : !findings.data ? (
				<Working what="Checking every rule on the whole loom" />
			) : (
				<>
					<p className="tally">
						{SEVERITIES.map(({ severity, word }) => {
							const n = findings.data.filter((finding) => finding.severity === severity).length;
							return (
								<span key={severity} className="tag" data-tone={severity}>
									{n} {word}
								</span>
							);
						})}
						{accepted > 0 && <span className="tag">{accepted} accepted</span>}
					</p>
					<ListAndDetail
						label="Findings"
						rows={found.map((one, k) => {
							const { rule, severity, where } = one.grounded.finding;
							const { word, meaning } = severityOf(severity);
							return {
								id: String(k + 1),
								title: rule.replaceAll("-", " "),
								text: where,
								end: one.accepted ? `${word}, accepted` : word,
								endLabel: one.accepted ? `${meaning} A person answers for it as it is.` : meaning,
								tone: severity,
							};
						})}
						open={open ? chosen : ""}
						onOpen={(finding) => set({ finding })}
						empty="No rule has anything to say about this loom."
					>
						{open && <FindingDetail key={which + chosen} found={open} which={which} />}
					</ListAndDetail>
					<NoLongerFound gone={gone} />
				</>
			)}
		</div>
	);
}
