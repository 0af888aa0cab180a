/** One thing wanted: a circuit from a contact to where it must lead, or a part that comes or goes. */
import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import { Destination } from "./Destination.js";
import { EndField } from "./EndField.js";
import type { TableRow } from "./table-rows.js";

interface TargetFormProps {
	readonly row: TableRow;
	readonly onRow: (row: TableRow) => void;
	/** Undefined: it is not there yet. */
	readonly onRemove: (() => void) | undefined;
}

const WANTS = [
	{ value: "connect", label: "a circuit" },
	{ value: "separate", label: "a line comes apart" },
	{ value: "remove", label: "a part goes" },
	{ value: "fit", label: "a part comes" },
	{ value: "may fit", label: "a ground point may be made" },
];
const CLASSES = ["signal", "sensor", "power", "bus pair"];

export function TargetForm({ row, onRow, onRemove }: TargetFormProps) {
	const [cells, setCells] = useState(row);
	const want = cells.want || "connect";
	const set = (change: TableRow) => setCells({ ...cells, ...change });
	const field = (column: string, label: string, more?: { placeholder?: string; description?: string }) => (
		<TextInput
			label={label}
			autoComplete="off"
			value={cells[column] ?? ""}
			onChange={(event) => set({ [column]: event.currentTarget.value })}
			{...more}
		/>
	);
	return (
		<form
			className="stack"
			onSubmit={(event) => {
				event.preventDefault();
				onRow(cells);
			}}
		>
			<div className="form-grid">
				<NativeSelect
					label="What is wanted"
					value={want}
					data={WANTS}
					onChange={(event) => set({ want: event.currentTarget.value })}
				/>
				{field("target", "Its name", { placeholder: "reverse-lamps" })}
				{field("title", "In words", { placeholder: "reversing lamps by their switch" })}
			</div>
			{want === "connect" || want === "separate" ? (
				<>
					<EndField label="From" value={cells.from ?? ""} onChange={(from) => set({ from })} />
					{want === "connect" ? (
						<Destination value={cells.to ?? ""} onChange={(to) => set({ to })} />
					) : (
						<EndField
							label="From what it comes apart"
							value={cells.to ?? ""}
							onChange={(to) => set({ to })}
						/>
					)}
				</>
			) : (
				<div className="form-grid">
					{field("part", "The part", { description: "of parts.csv, new-parts.csv or new-joints.csv" })}
					{field("minutes", "Minutes of work", { description: "empty: as the shop's prices say" })}
				</div>
			)}
			{want === "connect" && (
				<div className="form-grid">
					{field("size", "Least size, mm²", { placeholder: "0.5" })}
					<NativeSelect
						label="Kind of circuit"
						value={cells.class || "signal"}
						data={CLASSES}
						onChange={(event) => set({ class: event.currentTarget.value })}
					/>
					{field("joints", "Most joints", { description: "0: none; empty: the shop's limit" })}
					{field("pair", "Pair", { description: "the same name in both, as a twisted pair" })}
				</div>
			)}
			<div className="buttons">
				<Button type="submit">See what that changes</Button>
				{onRemove && (
					<Button variant="default" onClick={onRemove}>
						No longer wanted
					</Button>
				)}
			</div>
		</form>
	);
}
