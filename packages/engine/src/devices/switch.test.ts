import { expect, it } from "vitest";
import { OnBench } from "./bench.test-helper.js";

const bench = new OnBench({
	parts: { KEY: "switch; ohms=0.01 | off:; run:30-15; start:30-15,30-50" },
	pins: { "KEY.30": "30", "KEY.15": "15", "KEY.50": "50" },
	nets: ["KEY.30 A", "KEY.15 B", "KEY.50 C"],
	when: { off: { KEY: "off" }, run: { KEY: "run" }, start: { KEY: "start" } },
});
const ohms = (to: string, when: string) => bench.ohms("KEY.30!pin", `KEY.${to}!pin`, when);

it("joins in each position the pairs its table names, and no others", () => {
	expect([ohms("15", "off"), ohms("50", "off")]).toEqual([Number.NaN, Number.NaN]);
	expect(ohms("15", "run")).toBeCloseTo(0.01, 9);
	expect(ohms("50", "run")).toBeNaN();
	expect(ohms("15", "start")).toBeCloseTo(0.01, 9);
	expect(ohms("50", "start")).toBeCloseTo(0.01, 9);
	// Both through the common terminal.
	expect(bench.ohms("KEY.15!pin", "KEY.50!pin", "start")).toBeCloseTo(0.02, 9);
});

it("stands in its first position where no condition says otherwise", () => {
	const silent = new OnBench({
		parts: { S: "switch | closed:1-2; open:", R: "resistor; ohms=1" },
		pins: { "S.1": "1", "S.2": "2", "R.1": "a", "R.2": "b" },
		nets: ["S.1 A", "S.2 B", "R.1 C", "R.2 D"],
		when: { rest: { R: "fitted" } },
	});
	expect(silent.ohms("S.1!pin", "S.2!pin", "rest")).toBeCloseTo(0.02, 9);
});

it("a pair written the other way round in another position is the same pair", () => {
	const turned = new OnBench({
		parts: { S: "switch; ohms=0.02 | off:; one:1-2; two:2-1" },
		pins: { "S.1": "1", "S.2": "2" },
		nets: ["S.1 A", "S.2 B"],
		when: { off: { S: "off" }, one: { S: "one" }, two: { S: "two" } },
	});
	expect(turned.ohms("S.1!pin", "S.2!pin", "off")).toBeNaN();
	expect(turned.ohms("S.1!pin", "S.2!pin", "one")).toBeCloseTo(0.02, 9);
	expect(turned.ohms("S.1!pin", "S.2!pin", "two")).toBeCloseTo(0.02, 9);
});
