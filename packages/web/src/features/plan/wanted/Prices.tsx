/** What work, material and joints cost this shop: every figure by which the choices are weighed, to be set otherwise. */
import { DEFAULT_COSTS } from "@loomwright/engine";
import { Button, Modal, TextInput, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../../app/car.js";
import { ReplaceTables } from "../../../shared/ReplaceTables.js";
import { type PriceRow, priceRows } from "./price-rows.js";
import { withRow } from "./table-rows.js";

const FIGURES = ["minutes", "price", "value"] as const;

export function Prices() {
	const { tables } = useCar();
	const file = Object.keys(tables).find((name) => /^costs\./.test(name)) ?? "costs.csv";
	const text = tables[file] ?? "";
	const rows = priceRows(text, DEFAULT_COSTS);
	const [open, setOpen] = useState<PriceRow>();
	const [next, setNext] = useState("");
	const close = () => {
		setOpen(undefined);
		setNext("");
	};
	return (
		<details className="fold sheet aside">
			<summary>What work, material and joints cost here</summary>
			<ul className="row-list">
				{rows.map((row) => (
					<li key={`${row.item} ${row.zone}`}>
						<UnstyledButton className="row" onClick={() => setOpen(row)}>
							<span className="row-main">
								<strong className="cap">{[row.item, row.zone].filter(Boolean).join(", ")}</strong>
								<span className="soft">{row.note}</span>
							</span>
							<span className="row-end">{figureWords(row)}</span>
						</UnstyledButton>
					</li>
				))}
			</ul>
			<Modal
				opened={open !== undefined}
				onClose={close}
				title={open ? [open.item, open.zone].filter(Boolean).join(", ") : ""}
				size="lg"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				{next !== "" ? (
					<ReplaceTables
						tables={{ [file]: next }}
						confirm="Reckon with it"
						back="Back to the figure"
						onCancel={() => setNext("")}
					/>
				) : (
					open && <PriceForm row={open} onCells={(cells) => setNext(withRow(text, open.at, cells))} />
				)}
			</Modal>
		</details>
	);
}

const LABELS = { minutes: "Minutes", price: "Price, in the shop's money", value: "Value" };

function PriceForm({ row, onCells }: { row: PriceRow; onCells: (cells: PriceRow["cells"]) => void }) {
	const [cells, setCells] = useState(row.cells);
	return (
		<form
			className="stack"
			onSubmit={(event) => {
				event.preventDefault();
				onCells({ ...cells, note: cells.note || "the shop's own" });
			}}
		>
			<p className="soft">{row.note}</p>
			{FIGURES.filter((figure) => row.uses.includes(figure)).map((figure) => (
				<TextInput
					key={figure}
					label={LABELS[figure]}
					inputMode="decimal"
					autoComplete="off"
					value={cells[figure] ?? ""}
					onChange={(event) => setCells({ ...cells, [figure]: event.currentTarget.value })}
				/>
			))}
			<Button type="submit">See what that changes</Button>
		</form>
	);
}

const figureWords = ({ uses, cells }: PriceRow): string =>
	uses
		.map((figure) =>
			figure === "minutes"
				? `${cells.minutes} min`
				: figure === "price"
					? `price ${cells.price}`
					: (cells.value ?? ""),
		)
		.join(", ");
