import { expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";
import { fuseOhms } from "./fuse.js";

const bench = new OnBench({
	parts: { F1: "fuse; amps=10", F2: "fuse; amps=10; ohms=0.5" },
	pins: { "F1.1": "in", "F1.2": "out", "F2.1": "in", "F2.2": "out" },
	nets: ["F1.1 A", "F1.2 B", "F2.1 C", "F2.2 D"],
	when: { in: { F1: "in" }, out: { F1: "pulled", F2: "pulled" } },
});

it("its resistance falls with its rating, or is as given", () => {
	expect(bench.ohms("F1.1!pin", "F1.2!pin", "in")).toBeCloseTo(fuseOhms(10), 9);
	expect(bench.ohms("F2.1!pin", "F2.2!pin", "in")).toBeCloseTo(0.5, 9);
	expect(fuseOhms(20)).toBeCloseTo(fuseOhms(10) / 2, 12);
});

// A maker's table is not cited; the millivolts at rated current are common practice, no source.
it.each([5, 7.5, 10, 15, 20, 30])("%d A: between 30 and 100 mV at its rated current", (amps) => {
	expect(amps * fuseOhms(amps)).toBeGreaterThan(0.03);
	expect(amps * fuseOhms(amps)).toBeLessThan(0.1);
});

it("pulled, its socket is open; the fuse in the hand is not", () => {
	expect(bench.ohms("F1.1", "F1.2", "out")).toBeNaN();
	expect(off(bench.ohms("F1.1!pin", "F1.2!pin", "out"), fuseOhms(10))).toBeLessThan(1e-9);
});
