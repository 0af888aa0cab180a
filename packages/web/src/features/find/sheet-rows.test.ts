import { openCar, proveSheet, type RankedFault } from "@loomwright/engine";
import { expect, test } from "vitest";
import { SMALL_CAR } from "../../drawing/small-car.test-helper.js";
import { keyOf, rowsOf } from "../prove/rows.js";
import { worthReading } from "./sheet-rows.js";

const sheet = proveSheet(openCar(SMALL_CAR));
const rows = rowsOf(sheet);
const ranked = (posteriors: Readonly<Record<string, number>>) => ({
	faults: Object.entries(posteriors).map(([id, posterior]) => ({ id, posterior }) as RankedFault),
});

test("a row that halves the suspects tells one bit; what is read or catches none of them is not offered", () => {
	const [one, other] = rows.flatMap((row) => {
		const own = row.catches.find((id) => rows.every((r) => r === row || !r.catches.includes(id)));
		return own === undefined ? [] : [{ row, id: own }];
	});
	const found = ranked({ [one!.id]: 0.5, [other!.id]: 0.1, "open:wire:elsewhere": 0.4 });
	const worth = worthReading(sheet, {}, found);
	expect(worth[0]).toEqual({ row: one!.row, chance: 0.5, bits: 1 });
	// H(0.1) = 0.469 bits (T. M. Cover, J. A. Thomas, 'Elements of Information Theory', 2.1).
	expect(worth[1]!.row).toBe(other!.row);
	expect(worth[1]!.bits).toBeCloseTo(0.469, 3);
	expect(worth).toHaveLength(2);
	const read = worthReading(sheet, { [keyOf(one!.row)]: { value: "open" } }, found);
	expect(read.map(({ row }) => row)).toEqual([other!.row]);
});
