/** Which fault explains what was seen, and what to measure next. */
import type { Question } from "@loomwright/engine";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useFound } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { LoomChoice } from "../../shared/LoomChoice.js";
import { Working } from "../../shared/Working.js";
import { Actions } from "./Actions.js";
import { Contradictions } from "./Contradictions.js";
import { NextReading } from "./NextReading.js";
import { Practice } from "./Practice.js";
import { Ranking } from "./Ranking.js";
import { Seen } from "./Seen.js";
import { SheetRows } from "./SheetRows.js";
import { ShopRepairs } from "./ShopRepairs.js";
import { useCase } from "./use-case.js";

export function Find() {
	const { misfits } = useCar().car;
	const shown = useCase();
	const found = useFound(shown.evidence, shown.refused);
	const { data } = found;
	const [chosen, setChosen] = useState<Question>();
	return (
		<div className="page">
			<div className="page-head">
				<h1>Find</h1>
				<div className="page-tools">
					<LoomChoice value={shown.which} onChange={shown.setWhich} />
					<Practice shown={shown} />
				</div>
			</div>
			{misfits.length > 0 && shown.which === "converted" && (
				<p className="notice stack" data-tone="warn">
					The recipe does not fit this car as a whole (see Changes), so the converted loom here is not what
					will be built.
				</p>
			)}
			<div className="find">
				<Seen shown={shown} />
				<div className="find-answer stack" aria-busy={found.isFetching}>
					{found.error ? (
						<FaultNotice title="The faults cannot be ranked" error={found.error} />
					) : !shown.evidence ? (
						<section className="card stack">
							<p className="detail-hint">
								Enter what was seen: trouble codes, what works and what does not, readings. Or open a practice
								case.
							</p>
						</section>
					) : !data ? (
						<Working what="Weighing every fault of the loom; the first time takes longest" />
					) : (
						<>
							<p className="soft" role="status">
								{found.isFetching ? "Weighing every fault again …" : "Up to date with what was seen."}
							</p>
							<Contradictions found={data} shown={shown} />
							{(shown.proving !== "battery off" || data.next?.again) && (
								<NextReading
									found={data}
									shown={shown}
									busy={found.isFetching}
									chosen={chosen}
									onChoose={setChosen}
								/>
							)}
							{shown.proving === "battery off" && <SheetRows found={data} shown={shown} />}
							<Actions found={data} shown={shown} />
							<Ranking found={data} shown={shown} onChoose={setChosen} />
							<ShopRepairs which={shown.which} />
						</>
					)}
				</div>
			</div>
		</div>
	);
}
