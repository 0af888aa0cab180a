import { judge, openCar, proveSheet } from "@loomwright/engine";
import fc from "fast-check";
import { expect, test } from "vitest";
import { SMALL_CAR } from "../../drawing/small-car.test-helper.js";
import { bandWords, openWords, passes, shownWords } from "./band.js";

test("passes as the engine judges", () => {
	const sheet = proveSheet(openCar(SMALL_CAR));
	const rows = sheet.parts.flatMap((part) => part.rows);
	const shown = fc.oneof(fc.constant("open" as const), fc.double({ min: 0, max: 5e6, noNaN: true }));
	fc.assert(
		fc.property(fc.constantFrom(...rows), shown, (row, value) => {
			const near = value === "open" ? value : row.high === undefined ? value : (value / 5e6) * 2 * row.high;
			for (const one of [value, near])
				expect(passes(row, one)).toBe(judge(sheet, [{ row: row.number, value: one }])[0]!.passes);
		}),
		{ seed: 5, numRuns: 200 },
	);
});

test("limits in words", () => {
	const ohm = (value: number | undefined, low: number, high: number | undefined) =>
		({ value, low, high, unit: "ohm" }) as const;
	expect(bandWords(ohm(87.4, 78.16, 96.65))).toBe("78.2 Ω to 96.7 Ω");
	expect(bandWords(ohm(0.03, 0, 0.1384))).toBe("0.138 Ω or less");
	expect(bandWords(ohm(undefined, 2e6, undefined))).toBe("open");
	expect(openWords(ohm(undefined, 2e6, undefined))).toBe("2.00 MΩ or more also counts as open");
	expect(bandWords({ value: undefined, low: -0.5, high: 0.5, unit: "V" })).toBe("0, give or take 500 mV");
	expect(bandWords({ value: 12.6, low: 12.3, high: 12.9, unit: "V" })).toBe("12.3 V to 12.9 V");
	expect([shownWords("open", "ohm"), shownWords(4700, "ohm")]).toEqual(["open", "4.70 kΩ"]);
});
