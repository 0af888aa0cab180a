/** The first power, stage by stage: the next one stays locked until all of this one holds. */
import type { Stage } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { useSettings } from "../../app/use-setting.js";
import { usePowerUp, useProveSheet } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { SavedState } from "../../shared/SavedState.js";
import { Working } from "../../shared/Working.js";
import { actsOfSheet, rowsOf, tallyOf } from "../prove/rows.js";
import { useSheetWork } from "../prove/use-sheet-work.js";
import { StageCard } from "./StageCard.js";
import { actsOfStage, reached } from "./stages.js";
import { usePowerWork } from "./use-power-work.js";

export function PowerUp() {
	const stages = usePowerUp();
	return (
		<div className="page">
			<div className="page-head">
				<h1>Power up</h1>
			</div>
			<p className="notice" data-tone="warn">
				The maker's procedure for the battery and the restraints comes before anything said here. Two people:
				one at the battery clamp, who takes it off at the first smoke, smell or spark.
			</p>
			{stages.error ? (
				<FaultNotice title="The stages cannot be computed" error={stages.error} />
			) : stages.data ? (
				<Stages stages={stages.data} />
			) : (
				<Working what="Working out in which order power may come on" />
			)}
		</div>
	);
}

function Stages({ stages }: { stages: readonly Stage[] }) {
	const [query, set] = useSettings();
	const power = usePowerWork();
	const { data: sheet, isPending } = useProveSheet();
	const { taken } = useSheetWork();
	const tally = sheet && tallyOf(rowsOf(sheet), taken);
	const proved = tally !== undefined && tally.unread + tally.wrong === 0;
	const now = reached(stages, power.work, proved);
	if (isPending) return <Working what="Looking at the prove sheet, which comes before the first stage" />;
	if (stages.length === 0) return <p>This car has no battery, so there is nothing to power up.</p>;
	const asked = query.get("stage") ?? "";
	const at = asked === "" ? Math.min(now, stages.length - 1) : Number(asked) - 1;
	const stage = asked === "list" ? undefined : stages[at];
	return (
		<>
			<p role="status">
				<strong>
					{now} of {stages.length}
				</strong>{" "}
				stages hold
			</p>
			<ListAndDetail
				label="Stages"
				rows={stages.map(({ title, read }, k) => ({
					id: String(k + 1),
					title: `${k + 1}. ${title}`,
					text: k > now ? "" : read.length === 0 ? "nothing to read" : `${read.length} to read`,
					end: k < now ? "holds" : k === now ? "now" : "locked",
					endLabel:
						k < now ? "all of it holds" : k === now ? "the stage to do" : `opens when stage ${k} holds`,
					...(k < now ? { tone: "note" } : k === now ? { tone: "warn" } : {}),
				}))}
				open={stage === undefined ? "" : String(at + 1)}
				onOpen={(id) => set({ stage: id === "" ? "list" : id })}
				empty=""
			>
				{stage &&
					(at > now ? (
						<Locked stage={stage} now={now + 1} onNow={() => set({ stage: "" })} />
					) : (
						<StageCard
							key={stage.title}
							standing={at === now ? "now" : "left behind"}
							stage={stage}
							of={stages.length}
							power={power}
							proved={proved}
							sheetWords={
								tally ? `${tally.unread} to read, ${tally.wrong} not right` : "it cannot be computed"
							}
							acts={[...(sheet ? actsOfSheet(sheet, taken) : []), ...actsOfStage(stage, power.work)]}
							onNext={() => {
								power.pass(stage);
								set({ stage: at + 1 < stages.length ? "" : "list" });
								window.scrollTo({ top: 0 });
							}}
						/>
					))}
			</ListAndDetail>
			{now === stages.length && <PoweredUp />}
			<StartOver onSure={power.startOver} />
			<SavedState entry={power.entry} />
		</>
	);
}

function Locked({ stage, now, onNow }: { stage: Stage; now: number; onNow: () => void }) {
	return (
		<div className="stack">
			<p className="next-word">Locked</p>
			<h2 className="cap">{stage.title}</h2>
			<p>It opens when stage {now} and all after it hold.</p>
			<Button size="xl" onClick={onNow}>
				To stage {now}
			</Button>
		</div>
	);
}

function PoweredUp() {
	const { job } = useCar();
	return (
		<section className="notice stack">
			<h2>Every stage holds: the car is powered up</h2>
			<p>Now read the trouble codes of every unit and try every function.</p>
			<Button component="a" href={formatRoute({ job: job.id, stage: "find" })}>
				Enter codes and functions
			</Button>
		</section>
	);
}

function StartOver({ onSure }: { onSure: () => void }) {
	const [sure, setSure] = useState(false);
	if (!sure)
		return (
			<div className="choice">
				<Button variant="default" onClick={() => setSure(true)}>
					Begin the power-up anew
				</Button>
			</div>
		);
	return (
		<div className="choice">
			<Button
				onClick={() => {
					onSure();
					setSure(false);
				}}
			>
				Yes, from the first stage again
			</Button>
			<Button variant="default" onClick={() => setSure(false)}>
				No, keep what was read
			</Button>
		</div>
	);
}
