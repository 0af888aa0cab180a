import { expect, test } from "vitest";
import { benchCircuit, unit, wire } from "./support/bench-loom.test-helper.js";
import { terminalSize } from "./terminal-size.js";

const car = (mm2: number, values: Record<string, number> = { least_mm2: 0.5, most_mm2: 1 }) =>
	benchCircuit({
		parts: [
			unit("X1", "connector", {}, { values, marks: ["wet"] }),
			unit("B1", "thermistor", { a: "a", b: "b" }, { connector: "X1" }),
		],
		wires: [wire("W0", "B1.a > cut", mm2)],
	});

test("a wire outside the range of the terminals; 20 AWG (0.518 mm2) and an unknown range pass", () => {
	for (const mm2 of [0.5, 0.518, 1]) expect(terminalSize.check(car(mm2))).toEqual([]);
	expect(terminalSize.check(car(6, {}))).toEqual([]);
	expect(terminalSize.check(car(0.35))[0]!.why).toContain("its seal does not close");
	const [found, ...more] = terminalSize.check(car(1.5));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "terminal-size", severity: "warn", path: ["B1.a", "W0"] });
	expect(found!.why).toContain("at least 0.5 mm2 and at most 1 mm2");
});
