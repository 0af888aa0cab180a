/** Bringing in tables from the tablet: a target, a recipe, prices. Tried first, told by row what is wrong; all or none. */
import { Button, FileButton, NativeSelect } from "@mantine/core";
import { useRef, useState } from "react";
import { useCar } from "../../app/car.js";
import { ReplaceTables } from "../../shared/ReplaceTables.js";
import { type ReadFile, readFiles, TABLE_FILES } from "../../shared/read-files.js";
import { guessTable, TABLE_NAMES } from "./guess-table.js";

interface Brought extends ReadFile {
	/** Name of the table it is to be; empty: not said yet. */
	readonly table: string;
}

export function BringIn() {
	const { tables } = useCar();
	const [brought, setBrought] = useState<readonly Brought[]>([]);
	const forget = useRef<() => void>(null);
	const take = async (files: readonly File[]) => {
		const read = await readFiles(files);
		// The same file, mended, may be chosen again.
		forget.current?.();
		setBrought(read.map((file) => ({ ...file, table: guessTable(file.name, file.text ?? "") })));
	};
	const unread = brought.filter(({ text }) => text === undefined);
	const twice = brought.filter(({ table }, k) =>
		brought.some((other, at) => at < k && other.table === table),
	);
	const ready =
		brought.length > 0 &&
		unread.length === 0 &&
		twice.length === 0 &&
		brought.every(({ table }) => table !== "");
	return (
		<section className="sheet stack aside" aria-label="Bring in tables">
			<h2>Bring in tables</h2>
			<p className="soft">
				A target, a recipe, the shop's prices: docs/plan.md and docs/tables.md describe them. They are tried
				on this car first; if a row is wrong, nothing of any file is taken in.
			</p>
			<div className="buttons">
				<FileButton resetRef={forget} multiple accept={TABLE_FILES} onChange={(files) => void take(files)}>
					{(props) => <Button {...props}>Choose files</Button>}
				</FileButton>
			</div>
			{brought.map((file) => (
				<NativeSelect
					key={file.name}
					label={`${file.name} is the table`}
					value={file.table}
					data={[{ value: "", label: "say which" }, ...TABLE_NAMES]}
					onChange={(event) => {
						const table = event.currentTarget.value;
						setBrought(brought.map((one) => (one === file ? { ...one, table } : one)));
					}}
				/>
			))}
			{unread.map(({ name }) => (
				<p key={name} className="notice" data-tone="stop" role="alert">
					{name} is not UTF-8. Save it as CSV UTF-8 from the spreadsheet, then choose it again.
				</p>
			))}
			{twice.map(({ name, table }) => (
				<p key={name} className="notice" data-tone="stop" role="alert">
					Two files are to be the table {table}. Say which is which.
				</p>
			))}
			{ready && (
				<ReplaceTables
					tables={Object.fromEntries(brought.map(({ table, text = "" }) => [nameThere(table, tables), text]))}
					confirm="Take them in"
					onCancel={() => setBrought([])}
				/>
			)}
		</section>
	);
}

/** The file of the car that holds the table, whatever its ending; else a new one. */
const nameThere = (table: string, tables: Readonly<Record<string, string>>): string =>
	Object.keys(tables).find((name) => name.replace(/\.\w+$/, "") === table) ?? `${table}.csv`;
