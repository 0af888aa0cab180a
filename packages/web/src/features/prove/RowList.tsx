/** Every row of the sheet, to jump to; by how the car stands. */
import type { ProveSheet, SheetRow } from "@loomwright/engine";
import { Button, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { Choice } from "../../shared/Choice.js";
import { bandWords, shownWords } from "../meter/band.js";
import { type AllTaken, keyOf, type RowState, rowsOf, stateOf, tallyOf } from "./rows.js";
import type { SheetWork } from "./use-sheet-work.js";

interface RowListProps {
	readonly sheet: ProveSheet;
	readonly work: SheetWork;
	readonly onRow: (number: number) => void;
}

type Filter = "all" | RowState;

const TONES: Readonly<Record<RowState, string | undefined>> = {
	unread: undefined,
	right: "note",
	wrong: "stop",
	"left out": "warn",
};

const NAMES: Readonly<Record<RowState, string>> = {
	unread: "To read",
	wrong: "Not right",
	"left out": "Left out",
	right: "Right",
};

export function RowList({ sheet, work, onRow }: RowListProps) {
	const [filter, setFilter] = useState<Filter>("all");
	const tally = tallyOf(rowsOf(sheet), work.taken);
	const states = (Object.keys(NAMES) as RowState[]).filter((state) => tally[state] > 0);
	const options = [
		{ value: "all" as Filter, label: `All ${rowsOf(sheet).length}` },
		...states.map((state) => ({ value: state as Filter, label: `${NAMES[state]} ${tally[state]}` })),
	];
	return (
		<>
			<Choice<Filter> label="Show" value={filter} options={options} onChange={setFilter} />
			{sheet.parts.map((part) => {
				const rows = part.rows.filter((row) => filter === "all" || stateOf(row, work.taken) === filter);
				if (rows.length === 0) return null;
				return (
					<section key={part.when} className="card prove-part">
						<h2 className="cap">{part.title}</h2>
						<ul className="row-list">
							{rows.map((row) => (
								<li key={row.number}>
									<Line row={row} taken={work.taken} onRow={onRow} />
								</li>
							))}
						</ul>
					</section>
				);
			})}
			<StartOver work={work} />
		</>
	);
}

function Line({ row, taken, onRow }: { row: SheetRow; taken: AllTaken; onRow: (number: number) => void }) {
	const state = stateOf(row, taken);
	const own = taken[keyOf(row)];
	const places = row.place === row.toPlace ? row.place : `${row.place}, and ${row.toPlace}`;
	return (
		<UnstyledButton className="row" data-tone={TONES[state]} onClick={() => onRow(row.number)}>
			<span className="prove-number">{row.number}</span>
			<span className="row-main">
				<span className="cap">{places}</span>
				<span>
					<strong className="mono">{row.question.from}</strong> to{" "}
					<strong className="mono">{row.question.to}</strong>
				</span>
				<span className="soft">must show {bandWords({ ...row, unit: "ohm" })}</span>
			</span>
			<span className="row-end">
				{own && ("value" in own ? `${NAMES[state]}: ${shownWords(own.value, "ohm")}` : NAMES[state])}
			</span>
		</UnstyledButton>
	);
}

function StartOver({ work }: { work: SheetWork }) {
	const [sure, setSure] = useState(false);
	const read = Object.keys(work.taken).length;
	if (read === 0) return null;
	return (
		<div className="choice">
			{sure ? (
				<>
					<Button
						onClick={() => {
							work.startOver();
							setSure(false);
						}}
					>
						Yes, put all {read} aside
					</Button>
					<Button variant="default" onClick={() => setSure(false)}>
						No, keep them
					</Button>
				</>
			) : (
				<Button variant="default" onClick={() => setSure(true)}>
					Begin the sheet anew
				</Button>
			)}
		</div>
	);
}
