import type { Row } from "../tables/index.js";
import { parseLength, parseNumber } from "../units/index.js";
import type { PlaceRow } from "./types.js";

export const PLACES = {
	place: "required",
	zone: "optional",
	near: "optional",
	metres: "optional",
	celsius: "optional",
	note: "optional",
} as const;

export function readPlaces(rows: readonly Row<keyof typeof PLACES>[]): PlaceRow[] {
	return rows.flatMap((row) => {
		const [near, metres] = [row.text("near"), row.read("metres", parseLength)];
		if (near !== "" && row.text("metres") === "")
			row.refuse("metres", "the cell is empty", "how far it is from there, e.g. 0.4 m");
		if (near === "" && metres !== undefined)
			row.refuse("near", "the cell is empty", "the place that the metres are counted from");
		const celsius = row.read("celsius", parseNumber);
		return row.faulty ? [] : [{ place: row.text("place"), zone: row.text("zone"), near, metres, celsius }];
	});
}
