/** The shop's prices as rows: what its table says, and for the rest what is listed for every shop. */
import { rowsOf, type TableRow } from "./table-rows.js";

type Figure = "minutes" | "price" | "value";

export interface PriceRow {
	readonly item: string;
	/** Empty: everywhere. */
	readonly zone: string;
	readonly note: string;
	/** Figures that this item has. */
	readonly uses: readonly Figure[];
	/** All cells of its row, as the table would hold them. */
	readonly cells: TableRow;
	/** Its place among the table's rows; their number: it has none yet. */
	readonly at: number;
}

type Listed = ReadonlyMap<string, Readonly<Record<Figure, number>> & { readonly note: string }>;

/** @param listed of every item, what it costs where the table does not say */
export function priceRows(text: string, listed: Listed): PriceRow[] {
	const own = rowsOf(text);
	return [...listed].flatMap(([item, general]): PriceRow[] => {
		const uses = (["minutes", "price", "value"] as const).filter((figure) => general[figure] !== 0);
		const cellsOf = (row: TableRow): TableRow => ({
			...row,
			item,
			...Object.fromEntries(uses.map((figure) => [figure, row[figure] || String(general[figure])])),
		});
		const rows = own.flatMap((row, at): PriceRow[] => {
			if (row.item !== item) return [];
			return [{ item, zone: row.zone ?? "", note: row.note || general.note, uses, cells: cellsOf(row), at }];
		});
		if (rows.some(({ zone }) => zone === "")) return rows;
		return [{ item, zone: "", note: general.note, uses, cells: cellsOf({}), at: own.length }, ...rows];
	});
}
