import { describe, expect, test } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import { awgMm2 } from "../units/size.js";
import { pullForce, pullForceAwg, stripLength } from "./crimp.js";

const gauge = (awg: string) => (awg.includes("/") ? 1 - Number(awg.split("/")[0]) : Number(awg));

// Source: reference/electrical/crimp-pull-force-mm2.csv and crimp-pull-force-awg.csv, row by row.
test.each(reference("crimp-pull-force-mm2"))("$area_mm2 mm2 stands $min_N N", (row) => {
	const source = `reference/electrical/crimp-pull-force-mm2.csv ${row.id!.slice(-3)}`;
	expect(pullForce(Number(row.area_mm2))).toEqual({ value: Number(row.min_N), source });
});

test.each(reference("crimp-pull-force-awg"))("$awg AWG stands $min_lbf lbf", (row) => {
	const { value, source } = pullForceAwg(awgMm2(gauge(row.awg!)))!;
	expect(source).toBe(`reference/electrical/crimp-pull-force-awg.csv ${row.id!.slice(-3)}`);
	expect(value).toBe(Number(row.min_N));
	// A pound-force is 4.4482216 N by definition.
	expect(value / 4.4482216).toBeCloseTo(Number(row.min_lbf), 1);
});

describe("strip lengths", () => {
	test.each(reference("terminal-practice").filter((row) => row.item!.startsWith("strip")))(
		"$to mm2: $value mm",
		(row) => {
			const source = `reference/electrical/terminal-practice.csv ${row.id!.slice(-3)}`;
			expect(stripLength(Number(row.to))).toEqual({ value: Number(row.value), source });
		},
	);
});

test("sizes between rows count as the smaller, beyond the metric table by gauge, beyond both nothing is said", () => {
	expect(pullForce(0.6)!.value).toBe(60);
	expect(pullForce(awgMm2(20))!.value).toBe(60);
	expect(pullForce(16)!.source).toContain("crimp-pull-force-awg");
	expect(pullForce(0.01)).toBeUndefined();
	expect(pullForceAwg(0.01)).toBeUndefined();
	expect(stripLength(120)).toBeUndefined();
});
