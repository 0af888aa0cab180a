import { spawnSync } from "node:child_process";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { goalText, holds, jsonLine, tableLine } from "./figure.js";
import { inFreshProcesses, lastResult, summarise, time } from "./measure.js";

test("the median of an odd and an even count, with the range", () => {
	expect(summarise([3, 1, 2])).toEqual({ median: 2, spread: [1, 3] });
	expect(summarise([4, 1, 2, 3])).toEqual({ median: 2.5, spread: [1, 4] });
	expect(() => summarise([])).toThrow(RangeError);
});

test("warm-up runs are not counted, and the last result is kept", async () => {
	let calls = 0;
	const { median, spread } = await time(() => ++calls, { runs: 4, warmUp: 2, inner: 3 });
	expect(calls).toBe(18);
	expect(lastResult()).toBe(18);
	expect(median).toBeGreaterThanOrEqual(spread[0]);
	expect(median).toBeLessThanOrEqual(spread[1]);
});

test("each fresh run is a process of its own", () => {
	const pids = inFreshProcesses<number>(new URL("fixture/pid.ts", import.meta.url), "pid", 2);
	expect(new Set([...pids, process.pid]).size).toBe(3);
});

test.each([
	[0.9, { below: 1 }, "< 1", true],
	[1, { below: 1 }, "< 1", false],
	[1, { atMost: 1 }, "<= 1", true],
	[1.1, { atMost: 1 }, "<= 1", false],
	[95, { atLeast: 95 }, ">= 95", true],
	[94.9, { atLeast: 95 }, ">= 95", false],
	[Number.NaN, { below: 1 }, "< 1", false],
	[7, undefined, "", null],
])("%d against %j", (value, goal, text, expected) => {
	expect(goalText(goal)).toBe(text);
	expect(holds(value, goal)).toBe(expected);
});

test("a figure as JSON has five keys, as a table line its verdict", () => {
	const figure = { figure: "a", value: 1.5, unit: "s", goal: { below: 1 }, spread: [1, 2] } as const;
	expect(jsonLine(figure)).toBe('{"figure":"a","value":1.5,"unit":"s","goal":"< 1","holds":false}');
	expect(jsonLine({ figure: "b", value: 2, unit: "" })).toBe(
		'{"figure":"b","value":2,"unit":"","goal":null,"holds":null}',
	);
	expect(tableLine(figure)).toMatch(/^a +1\.50 s +1 to 2 +< 1 +MISSED$/);
});

const bench = (...words: string[]) =>
	spawnSync(
		process.execPath,
		["--conditions=source", "--import", "tsx", resolve(import.meta.dirname, "main.ts"), ...words],
		{ encoding: "utf8" },
	);

test("an unknown topic lists the topics", () => {
	const { status, stdout, stderr } = bench("no-such", "--json");
	expect(status).toBe(2);
	expect(stdout).toBe("");
	expect(stderr).toContain('There is no topic "no-such".');
	expect(stderr).toMatch(/Topics: .*demo/);
});
