/** What the converted car must have: circuits and parts, each to be stated otherwise, taken back, or added to. */
import { Button, Modal, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../../app/car.js";
import { ReplaceTables } from "../../../shared/ReplaceTables.js";
import { count } from "../../../shared/words.js";
import { TargetForm } from "./TargetForm.js";
import { rowsOf, type TableRow, withRow } from "./table-rows.js";

const FILE = "targets.csv";

export function Wanted() {
	const { tables } = useCar();
	const file = Object.keys(tables).find((name) => /^targets\./.test(name)) ?? FILE;
	const text = tables[file] ?? "";
	const rows = rowsOf(text);
	const [at, setAt] = useState<number>();
	/** As it was last stated, so that what is refused can be mended. */
	const [draft, setDraft] = useState<TableRow>();
	const [next, setNext] = useState("");
	const close = () => {
		setAt(undefined);
		setDraft(undefined);
		setNext("");
	};
	const row = at === undefined ? undefined : (draft ?? rows[at] ?? EMPTY);
	return (
		<details className="fold sheet aside" open={rows.length === 0}>
			<summary>What is wanted of the car: {count(rows.length, "row")} of targets.csv</summary>
			<div className="stack">
				<ul className="row-list">
					{rows.map((one, k) => (
						<li key={`${one.target} ${one.part}`}>
							<UnstyledButton className="row" onClick={() => setAt(k)}>
								<span className="row-main">
									<strong className="cap">{one.title || one.target}</strong>
									<span className="soft">{wantedWords(one)}</span>
								</span>
							</UnstyledButton>
						</li>
					))}
				</ul>
				<Button onClick={() => setAt(rows.length)}>Want something more</Button>
			</div>
			<Modal
				opened={row !== undefined}
				onClose={close}
				title={at !== undefined && at < rows.length ? "Wanted" : "Want something more"}
				size="xl"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				{next !== "" ? (
					<ReplaceTables
						tables={{ [file]: next }}
						confirm="Want it so"
						back="Back to what was stated"
						onCancel={() => setNext("")}
					/>
				) : (
					row &&
					at !== undefined && (
						<TargetForm
							row={row}
							onRow={(changed) => {
								setDraft(changed);
								setNext(withRow(text, at, changed));
							}}
							onRemove={at < rows.length ? () => setNext(withRow(text, at, undefined)) : undefined}
						/>
					)
				)}
			</Modal>
		</details>
	);
}

const EMPTY: TableRow = { target: "", want: "connect" };

/** `S-CLU.3 to ECU.A24, 0.5 mm², at most 1 joint`. */
function wantedWords({ want = "", part = "", from = "", to = "", size = "", joints = "" }: TableRow): string {
	if (part !== "") return `${part}: ${want}`;
	const what = want === "separate" ? `${from} comes apart from ${to}` : `${from} to ${to}`;
	const limit =
		joints === "" ? "" : joints === "0" ? "no joint" : `at most ${count(Number(joints), "joint")}`;
	return [what, size === "" ? "" : `${size} mm²`, limit].filter(Boolean).join(", ");
}
