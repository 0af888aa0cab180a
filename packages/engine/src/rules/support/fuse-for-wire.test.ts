import { expect, test } from "vitest";
import { reference } from "../../units/reference.test-helper.js";
import { awgMm2 } from "../../units/size.js";
import { FUSE_FOR_WIRE, largestFuse, wireForFuse } from "./fuse-for-wire.js";

const rows = reference("fuse-for-wire");

test("the table is the one in reference/electrical/fuse-for-wire.csv", () => {
	expect(FUSE_FOR_WIRE).toEqual(rows.map((row) => [Number(row.mm2), Number(row.largest_fuse_A)]));
});

/** Published sizes with amperes in free air, smallest first: the 75 degree column, 60 degrees where it is empty. */
const published = reference("ampacity-free-air")
	.map((row): [number, number] => {
		const n = row.awg!.includes("/") ? 1 - Number(row.awg![0]) : Number(row.awg);
		return [awgMm2(n), Number(row.amps_75C || row.amps_60C)];
	})
	.sort(([x], [y]) => x - y);

/** On the line between two published sizes in a double logarithmic plot. */
function ampacity(mm2: number): number {
	const above = published.findIndex(([size]) => size >= mm2);
	const k = Math.max(1, above === -1 ? published.length - 1 : above);
	const [x0, y0] = published[k - 1]!;
	const [x1, y1] = published[k]!;
	return y0 * (mm2 / x0) ** (Math.log(y1 / y0) / Math.log(x1 / x0));
}

// Sources: reference/electrical/ampacity-free-air.csv; fuse-wire-rules.csv R1 (125 % of ampacity).
test.each(rows)("$mm2 mm2 carries $ampacity_A A in free air and takes a fuse up to 125 % of it", (row) => {
	const share = Number(reference("fuse-wire-rules").find((rule) => rule.rule === "R1")!.value);
	const amps = ampacity(Number(row.mm2));
	expect(amps).toBeCloseTo(Number(row.ampacity_A), 1);
	const fuse = Number(row.largest_fuse_A);
	expect(fuse).toBeLessThanOrEqual(share * amps);
	const next = [
		7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350,
	].find((f) => f > fuse)!;
	expect(next).toBeGreaterThan(share * amps);
});

test("a size between two rows counts as the smaller; AWG sizes as the metric size beside them", () => {
	expect(largestFuse(0.6)).toBe(10);
	expect(largestFuse(3)).toBe(30);
	expect(largestFuse(awgMm2(20))).toBe(10);
	expect(largestFuse(0.1)).toBe(0);
	expect(wireForFuse(20)).toBe(1.5);
	expect(wireForFuse(1000)).toBeUndefined();
});
