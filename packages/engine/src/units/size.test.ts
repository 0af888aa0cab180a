import fc from "fast-check";
import { expect, test } from "vitest";
import { reference } from "./reference.test-helper.js";
import { awgDiameterMm, awgMm2, formatSize, nearestAwg, parseSize } from "./size.js";

function mm2(text: string): number {
	const parsed = parseSize(text);
	if (!parsed.ok) throw new Error(parsed.problem);
	return parsed.value;
}

// Source: published wire tables, reference/electrical/conductor-awg-solid.csv (inches as printed, circular mils).
test.each(reference("conductor-awg-solid"))("$awg AWG has its published diameter and area", (row) => {
	const n = Number(row.n);
	const inches = row.published_diameter_in!;
	const decimals = inches.length - inches.indexOf(".") - 1;
	expect(Math.abs(awgDiameterMm(n) / 25.4 - Number(inches))).toBeLessThan(0.501 * 10 ** -decimals);
	const squareMm = Number(row.published_circ_mils) * (Math.PI / 4) * 0.0254 ** 2;
	expect(awgMm2(n) / squareMm).toBeCloseTo(1, 3);
	expect(mm2(`${row.awg} AWG`)).toBe(awgMm2(n));
	expect(mm2(`awg${row.awg}`)).toBe(awgMm2(n));
	expect(nearestAwg(awgMm2(n))).toBe(row.awg);
});

test.each([
	["0.75", 0.75],
	["0.75 mm2", 0.75],
	["2,5", undefined],
	[" 1.5mm² ", 1.5],
	["0 AWG", awgMm2(0)],
	["0000 AWG", awgMm2(-3)],
	["5/0 AWG", undefined],
	["41 AWG", undefined],
	["0", undefined],
	["-1", undefined],
	["1000", undefined],
	["thin", undefined],
	["", undefined],
])("size %s", (text, expected) => {
	const parsed = parseSize(text);
	expect(parsed.ok ? parsed.value : undefined).toBe(expected);
});

test("any size reads back as written, to the last bit", () => {
	const sizes = fc.double({ min: 0.005, max: 240, noNaN: true });
	fc.assert(
		fc.property(sizes, (size) => {
			expect(mm2(formatSize(size))).toBe(size);
		}),
		{ seed: 258 },
	);
});

test("nearest gauge never errs by more than half a gauge", () => {
	// One gauge is a factor 92^(1/39) in diameter (ASTM B258), so half of one is 92^(1/39) in area.
	const half = 92 ** (1 / 39) + 1e-9;
	fc.assert(
		fc.property(fc.double({ min: 0.0055, max: 100, noNaN: true }), (size) => {
			const ratio = mm2(`${nearestAwg(size)} AWG`) / size;
			expect(Math.max(ratio, 1 / ratio)).toBeLessThan(half);
		}),
		{ seed: 258 },
	);
});
