import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { percent, quantity } from "./quantity.js";
import { table } from "./table.js";
import { GLUE, named, wrap } from "./wrap.js";

describe("wrap", () => {
	test("breaks between words, and inside one only where it must", () => {
		expect(wrap("battery off, lock closed", 12)).toEqual(["battery off,", "lock closed"]);
		expect(wrap("a W170a+b+c", 4)).toEqual(["a", "W170", "a+b+", "c"]);
		expect(wrap("", 10)).toEqual([""]);
	});

	test("keeps a number with its unit", () => {
		expect(wrap(`wire 1.2${GLUE}m`, 9)).toEqual(["wire", "1.2 m"]);
	});

	test("no line is too long, no character is lost", () => {
		const words = fc.array(fc.stringMatching(/^[a-z0-9.]{1,30}$/), { maxLength: 20 });
		fc.assert(
			fc.property(words, fc.integer({ min: 1, max: 40 }), (list, width) => {
				const lines = wrap(list.join(" "), width);
				for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
				expect(lines.join("").replaceAll(" ", "")).toBe(list.join(""));
			}),
			{ seed: 11 },
		);
	});

	test("named text hangs beside its name", () => {
		expect(named("why", "the wire is too thin for it", 20, 2, 4)).toBe(
			["  why   the wire is", "        too thin for", "        it"].join("\n"),
		);
	});
});

describe("table", () => {
	const columns = [{ title: "wire" }, { title: "ohms", align: "right" as const }, { title: "note" }];

	test("leaves out what is empty in every row, and aligns", () => {
		const rows = [
			["W1", "0.5", ""],
			["W22", "12", ""],
		];
		expect(table(columns, rows, 80)).toBe("wire  ohms\n----  ----\nW1     0.5\nW22     12");
	});

	test("wraps the widest column first", () => {
		const rows = [["W1", "0.5", "chafed where it leaves the conduit"]];
		expect(table(columns, rows, 30)).toBe(
			[
				"wire  ohms  note",
				"----  ----  ------------------",
				"W1     0.5  chafed where it",
				"            leaves the conduit",
			].join("\n"),
		);
	});

	test("becomes blocks where columns would be too narrow to read", () => {
		const rows = [["W1", "0.5", "chafed where it leaves the conduit"]];
		expect(table(columns, rows, 18)).toBe(
			["wire  W1", "ohms  0.5", "note  chafed where", "      it leaves", "      the conduit"].join("\n"),
		);
	});

	test("is never wider than asked", () => {
		const cell = fc.stringMatching(/^([a-zA-Z0-9.]{1,25} ?){0,8}$/);
		fc.assert(
			fc.property(
				fc.array(fc.tuple(cell, cell, cell), { minLength: 1 }),
				fc.integer({ min: 40, max: 120 }),
				(rows, width) => {
					for (const line of table(columns, rows, width).split("\n"))
						expect(line.length).toBeLessThanOrEqual(width);
				},
			),
			{ seed: 12 },
		);
	});
});

describe("quantity", () => {
	test.each([
		[12.449, "V", "12.45 V"],
		[0.0021, "V", "2.1 mV"],
		[0.99996, "V", "1 V"],
		[-0.5, "V", "-500 mV"],
		[0.00001, "V", "0 V"],
		[4452, "ohm", "4.452 kohm"],
		[85, "ohm", "85 ohm"],
		[10e6, "ohm", "10 Mohm"],
		[0.0034, "ohm", "3.4 mohm"],
		[105.26, "A", "105.3 A"],
		[null, "ohm", "open"],
	] as const)("%s %s is %s", (value, unit, words) => {
		expect(quantity(value, unit)).toBe(words);
	});

	test.each([
		[0.6321, "63.2 %"],
		[0.0417, "4.2 %"],
		[1, "100 %"],
		[0, "0 %"],
		[1e-9, "under 0.01 %"],
	])("share %s is %s", (share, words) => {
		expect(percent(share)).toBe(words);
	});
});
