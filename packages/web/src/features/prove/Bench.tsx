/** One reading at a time: bring the car to stand so, put the leads there, put in what the meter shows, see at once. */
import type { ProveSheet } from "@loomwright/engine";
import { Button, VisuallyHidden } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { shownWords } from "../meter/band.js";
import { FindButton } from "./FindButton.js";
import { Reading } from "./Reading.js";
import { actsOfSheet, keyOf, nextUnread, rowsOf, stateOf, tallyOf } from "./rows.js";
import { Standing } from "./Standing.js";
import { TakeOver } from "./TakeOver.js";
import type { SheetWork } from "./use-sheet-work.js";

interface BenchProps {
	readonly sheet: ProveSheet;
	readonly work: SheetWork;
	/** Number of the row asked for; 0: the next to read. */
	readonly at: number;
	readonly onRow: (number: number) => void;
}

export function Bench({ sheet, work, at, onRow }: BenchProps) {
	const [said, setSaid] = useState("");
	const rows = rowsOf(sheet);
	const row = rows.find(({ number }) => number === at) ?? nextUnread(rows, work.taken, 0);
	if (row === undefined) return <Done sheet={sheet} work={work} />;
	const part = sheet.parts.find((one) => one.rows.includes(row))!;
	const go = (number: number) => {
		setSaid("");
		onRow(number);
	};
	const goOn = () => go(nextUnread(rows, work.taken, row.number)?.number ?? 0);
	return (
		<>
			<VisuallyHidden role="status">{said}</VisuallyHidden>
			{work.standing !== part.when ? (
				<>
					<TakeOver sheet={sheet} work={work} />
					<Standing
						sheet={sheet}
						part={part}
						standing={work.standing}
						onStand={() => work.stand(part.when)}
					/>
				</>
			) : (
				<Reading
					key={row.number}
					sheet={sheet}
					part={part}
					row={row}
					work={work}
					onRow={go}
					said={said}
					onOn={goOn}
					onWrong={() => go(row.number)}
					onRight={(value) => {
						const next = nextUnread(rows, { ...work.taken, [keyOf(row)]: { value } }, row.number);
						setSaid(`Row ${row.number}: ${shownWords(value, "ohm")} is right.`);
						onRow(next?.number ?? 0);
					}}
				/>
			)}
		</>
	);
}

/** Nothing is left to read. */
function Done({ sheet, work }: { sheet: ProveSheet; work: SheetWork }) {
	const { job } = useCar();
	const rows = rowsOf(sheet);
	const tally = tallyOf(rows, work.taken);
	const wrong = rows.filter((row) => stateOf(row, work.taken) === "wrong");
	if (wrong.length > 0)
		return (
			<section className="card stack">
				<h2>
					The sheet is through; {wrong.length === 1 ? "one reading is" : `${wrong.length} readings are`} not
					right
				</h2>
				<p>Do not connect the battery. Find the cause, mend it, and read those rows once more.</p>
				<FindButton acts={actsOfSheet(sheet, work.taken)} proving="battery off" />
			</section>
		);
	return (
		<section className="card stack">
			<h2>The loom is proved as far as readings before power can</h2>
			<p>
				{tally.right} readings are right
				{tally["left out"] > 0
					? `, ${tally["left out"]} were left out: what only those would show is not proved`
					: ""}
				. Put back what was taken off, then power comes on in stages.
			</p>
			<Button component="a" size="xl" href={formatRoute({ job: job.id, stage: "power" })}>
				On to the power-up
			</Button>
		</section>
	);
}
