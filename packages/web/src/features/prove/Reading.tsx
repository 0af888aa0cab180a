/** One row of the sheet: the leads, the pad, and the verdict once something was put in. */
import type { ProveSheet, SheetPart, SheetRow } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { Cautions } from "../../shared/Cautions.js";
import type { Shown } from "../meter/band.js";
import { passes } from "../meter/band.js";
import { Leads } from "../meter/Leads.js";
import { LeadsDrawing } from "../meter/LeadsDrawing.js";
import { MeterPad } from "../meter/MeterPad.js";
import { LeaveOut } from "./LeaveOut.js";
import { keyOf, rowsOf } from "./rows.js";
import type { SheetWork } from "./use-sheet-work.js";
import { Verdict } from "./Verdict.js";

interface ReadingProps {
	readonly sheet: ProveSheet;
	readonly part: SheetPart;
	readonly row: SheetRow;
	readonly work: SheetWork;
	/** What became of the row before. */
	readonly said: string;
	readonly onRow: (number: number) => void;
	/** To the next row to read. */
	readonly onOn: () => void;
	/** What was put in is right. */
	readonly onRight: (value: Shown) => void;
	readonly onWrong: () => void;
}

export function Reading(props: ReadingProps) {
	const { sheet, part, row, work, said, onRow, onOn, onRight, onWrong } = props;
	const [again, setAgain] = useState(false);
	const rows = rowsOf(sheet);
	const taken = again ? undefined : work.taken[keyOf(row)];
	const before = part.rows[part.rows.indexOf(row) - 1]?.question;
	const stays = (id: string) => before !== undefined && (id === before.from || id === before.to);
	const { from, to } = row.question;
	const band = { ...row, unit: "ohm" } as const;
	return (
		<>
			<div className="meter-bench">
				<section className="card stack" aria-label={`Row ${row.number}`}>
					<p className="prove-row">
						<strong>Row {row.number}</strong> <span className="soft">{part.title}</span>
						<span className="prove-said" aria-hidden="true">
							{said}
						</span>
					</p>
					<Cautions cautions={row.cautions} />
					<Leads
						first={{ id: from, words: row.from, place: row.place, stays: stays(from) }}
						second={{ id: to, words: row.to, place: row.toPlace, stays: stays(to) }}
						band={band}
					/>
					<div className="choice">
						<Button variant="default" disabled={row.number === 1} onClick={() => onRow(row.number - 1)}>
							Row before
						</Button>
						<Button
							variant="default"
							disabled={row.number === rows.length}
							onClick={() => onRow(row.number + 1)}
						>
							Row after
						</Button>
						<LeaveOut
							key={keyOf(row)}
							onReason={(reason) => {
								work.leaveOut(row, reason);
								onOn();
							}}
						/>
					</div>
				</section>
				<section className="card stack" aria-label="What the meter shows">
					{taken ? (
						<Verdict
							sheet={sheet}
							row={row}
							taken={taken}
							work={work}
							onAgain={() => setAgain(true)}
							onOn={onOn}
						/>
					) : (
						<MeterPad
							band={band}
							onShown={(value) => {
								work.take(row, value);
								setAgain(false);
								if (passes(row, value)) onRight(value);
								else onWrong();
							}}
						/>
					)}
				</section>
			</div>
			<LeadsDrawing question={row.question} which="converted" />
		</>
	);
}
