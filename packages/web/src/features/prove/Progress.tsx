/** How far the sheet is: a strip with a field for each reading, counts, and how many mistakes are ruled out. */
import type { ProveSheet } from "@loomwright/engine";
import { useMemo } from "react";
import { count } from "../../shared/words.js";
import { FindButton } from "./FindButton.js";
import { type AllTaken, actsOfSheet, rowsOf, ruledOut, stateOf, tallyOf } from "./rows.js";

interface ProgressProps {
	readonly sheet: ProveSheet;
	readonly taken: AllTaken;
	/** Number of the row on the screen; 0: none. */
	readonly at: number;
}

export function Progress({ sheet, taken, at }: ProgressProps) {
	const rows = rowsOf(sheet);
	const tally = useMemo(() => tallyOf(rows, taken), [rows, taken]);
	const out = useMemo(() => ruledOut(rows, taken), [rows, taken]);
	const { faults, caught } = sheet.coverage;
	const here = rows.some((row) => row.number === at && stateOf(row, taken) === "wrong");
	const done = rows.length - tally.unread;
	return (
		<section className="prove-progress" aria-label="How far the sheet is">
			<div className="prove-strip" aria-hidden="true">
				{rows.map((row) => (
					<span
						key={row.number}
						data-state={stateOf(row, taken)}
						data-here={row.number === at || undefined}
					/>
				))}
			</div>
			<p>
				<strong>
					{done} of {rows.length}
				</strong>{" "}
				done: {tally.right} right,{" "}
				<span data-wrong={tally.wrong > 0 || undefined}>{tally.wrong} not right</span>
				{tally["left out"] > 0 && `, ${tally["left out"]} left out`}
			</p>
			<p>
				<strong>
					{out} of {caught}
				</strong>{" "}
				possible mistakes ruled out
				<span className="soft">; {count(faults - caught, "more", "more")} cannot show before power</span>
			</p>
			{tally.wrong > 0 && tally.unread > 0 && !here && (
				<div className="prove-back">
					<FindButton acts={actsOfSheet(sheet, taken)} proving="battery off" />
				</div>
			)}
		</section>
	);
}
