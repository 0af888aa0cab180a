import { expect, test } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import { outsideDiameter, sleeveFor, spliceBarrel } from "./cover.js";

const practice = (item: string) => reference("terminal-practice").filter((row) => row.item!.startsWith(item));

// Source: reference/electrical/cable-diameter.csv and terminal-practice.csv, row by row.
test.each(reference("cable-diameter"))("$area_mm2 mm2 is up to $max_outside_mm mm thick", (row) => {
	const source = `reference/electrical/cable-diameter.csv ${row.id!.slice(-3)}`;
	expect(outsideDiameter(Number(row.area_mm2))).toEqual({ value: Number(row.max_outside_mm), source });
});

test.each(practice("splice barrel"))("wires of $to mm2 together go into $value mm2", (row) => {
	const source = `reference/electrical/terminal-practice.csv ${row.id!.slice(-3)}`;
	expect(spliceBarrel(Number(row.to))).toEqual({ value: Number(row.value), source });
});

test.each(practice("sleeve"))("a sleeve of $to mm shrinks to $from mm", (row) => {
	const source = `reference/electrical/terminal-practice.csv ${row.id!.slice(-3)}`;
	expect(sleeveFor([[Number(row.to) / 1.1], [Number(row.from)]])).toEqual({
		value: Number(row.value),
		source,
	});
});

test("between rows the next size up; above the tables none, nor where no sleeve spans the two sides", () => {
	expect(outsideDiameter(0.6)!.value).toBe(1.9);
	expect(spliceBarrel(3)!.value).toBe(6);
	expect(outsideDiameter(95)).toBeUndefined();
	expect(spliceBarrel(40)).toBeUndefined();
	expect(sleeveFor([[20], [1.2]])).toBeUndefined();
	// Two wires of 1.6 mm side by side are about 2.7 mm thick.
	expect(sleeveFor([[1.6, 1.6], [1.6]])!.value).toBe(3);
});
