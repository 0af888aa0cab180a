/** One thing with what can be another about it; then what that would do. */
import type { Supposed } from "@loomwright/engine";
import { Button, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useRow, useWhatIf } from "../../engine/choosing-hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { CellEditor } from "./CellEditor.js";
import { Effects } from "./Effects.js";
import { CELLS, type Subject } from "./subjects.js";

interface SupposeProps {
	readonly subject: Subject;
	readonly supposed: Supposed | undefined;
	readonly onSuppose: (supposed: Supposed) => void;
}

export function Suppose({ subject, supposed, onSuppose }: SupposeProps) {
	const { table, row } = subject.row;
	const cells = useRow(table, row).data;
	const effects = useWhatIf("converted", supposed);
	const asked = supposed && "column" in supposed ? supposed.column : "";
	const [column, setColumn] = useState(asked);
	if (cells === null)
		return <p className="notice">No row of the tables says what this is: suppose the step that makes it.</p>;
	if (cells === undefined) return null;
	const columns = Object.entries(CELLS[table] ?? {}).filter(
		([name]) => table !== "recipe" || (cells[name] ?? "") !== "" || name === "size",
	);
	return (
		<article className="stack">
			<h2>
				<span className="mono">{subject.name}</span> {subject.text}
			</h2>
			{`${table}/${row}` !== subject.id && (
				<p className="soft">
					{table === "recipe" ? `Made by step ${row} of the recipe.` : `Said in ${table}.csv, row "${row}".`}
				</p>
			)}
			<div className="cells">
				{columns.map(([name, words]) => (
					<UnstyledButton
						key={name}
						className="cell"
						aria-pressed={column === name}
						onClick={() => setColumn(column === name ? "" : name)}
					>
						<span className="soft">{words}</span>
						<span className="mono">{cells[name] || "–"}</span>
					</UnstyledButton>
				))}
			</div>
			{column !== "" && (
				<CellEditor
					key={column}
					table={table}
					column={column}
					was={cells[column] ?? ""}
					onCell={(cell) => onSuppose({ table, row, column, cell })}
				/>
			)}
			{table === "recipe" && (
				<Button variant="default" onClick={() => onSuppose({ without: row })}>
					Leave step {row} out
				</Button>
			)}
			{effects.error ? (
				<FaultNotice title="This cannot be supposed" error={effects.error} />
			) : supposed && !effects.data ? (
				<Working what="Solving every condition anew and asking every rule" />
			) : (
				supposed &&
				effects.data && (
					<Effects
						key={JSON.stringify(supposed)}
						effects={effects.data}
						words={supposedWords(supposed, cells)}
					/>
				)
			)}
		</article>
	);
}

function supposedWords(supposed: Supposed, cells: Readonly<Record<string, string>>): string {
	if ("without" in supposed) return `Without step ${supposed.without}`;
	const words = CELLS[supposed.table]?.[supposed.column] ?? supposed.column;
	return `With ${words.toLowerCase()} ${supposed.cell || "empty"} instead of ${cells[supposed.column] || "empty"}`;
}
