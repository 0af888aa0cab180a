/** Rows of tables that come, go and change. */
import type { RowChange } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { count } from "./words.js";

interface Changed {
	readonly name: string;
	readonly rows: readonly RowChange[];
}

/** Rows shown at first. */
const FEW = 8;

const KINDS: Readonly<
	Record<RowChange["kind"], { readonly word: string; readonly tone: string | undefined }>
> = {
	added: { word: "comes", tone: undefined },
	gone: { word: "goes", tone: "stop" },
	changed: { word: "changes", tone: "warn" },
};

export const RowChanges = ({ tables }: { tables: readonly Changed[] }) =>
	tables.map((table) => <TableRows key={table.name} table={table} />);

function TableRows({ table: { name, rows } }: { table: Changed }) {
	const [all, setAll] = useState(false);
	return (
		<section className="stack">
			<h3>
				{name}: {summary(rows)}
			</h3>
			<ul className="row-changes">
				{(all ? rows : rows.slice(0, FEW)).map((row) => (
					<li key={`${row.kind} ${row.row} ${row.key}`}>
						<span className="tag" data-tone={KINDS[row.kind].tone}>
							{KINDS[row.kind].word}
						</span>
						<strong className="mono">{row.key}</strong>
						<Cells row={row} />
					</li>
				))}
			</ul>
			{!all && rows.length > FEW && (
				<Button variant="default" onClick={() => setAll(true)}>
					Show all {rows.length} rows
				</Button>
			)}
		</section>
	);
}

/** Of a row that came or went, what it says beside its name. */
const Cells = ({ row: { kind, key, cells } }: { row: RowChange }) => (
	<span className="row-cells">
		{cells
			.filter(({ was, is }) => kind === "changed" || (was || is) !== key)
			.map(({ column, was, is }) => (
				<span key={column}>
					<span className="soft">{column}</span>{" "}
					{kind === "changed" ? (
						<>
							{was || "empty"} <span className="arrow">→</span> {is || "empty"}
						</>
					) : (
						was || is
					)}
				</span>
			))}
	</span>
);

/** `3 rows come, 1 row goes`. */
function summary(rows: readonly RowChange[]): string {
	const of = (kind: RowChange["kind"], one: string, many: string) => {
		const n = rows.filter((row) => row.kind === kind).length;
		return n === 0 ? [] : [`${count(n, "row")} ${n === 1 ? one : many}`];
	};
	const parts = [
		...of("added", "comes", "come"),
		...of("changed", "changes", "change"),
		...of("gone", "goes", "go"),
	];
	return parts.length === 0 ? "as it is now" : parts.join(", ");
}
