import { expect, test } from "vitest";
import { priceRows } from "./price-rows.js";
import { withRow } from "./table-rows.js";

const listed = new Map([
	["hour", { minutes: 0, price: 60, value: 0, note: "price of an hour" }],
	["splice", { minutes: 5, price: 0.9, value: 0, note: "ends joined" }],
]);
const text = "item,zone,minutes\nsplice,engine bay,7\n";

test("what the table says goes before what is listed; a zone's row stands beside the general one", () => {
	const rows = priceRows(text, listed);
	expect(rows.map(({ item, zone, uses, at }) => [item, zone, uses, at])).toEqual([
		["hour", "", ["price"], 1],
		["splice", "", ["minutes", "price"], 1],
		["splice", "engine bay", ["minutes", "price"], 0],
	]);
	expect(rows[2]?.cells).toMatchObject({ minutes: "7", price: "0.9" });
});

test("a price set otherwise is written in its place", () => {
	const [hour, , bay] = priceRows(text, listed);
	expect(withRow(text, hour!.at, { ...hour!.cells, price: "80" })).toBe(
		"item,zone,minutes,price\nsplice,engine bay,7,\nhour,,,80\n",
	);
	expect(withRow(text, bay!.at, { ...bay!.cells, minutes: "9" })).toBe(
		"item,zone,minutes,price\nsplice,engine bay,9,0.9\n",
	);
});
