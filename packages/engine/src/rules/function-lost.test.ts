import { expect, test } from "vitest";
import { Circuit } from "../circuit/index.js";
import type { FunctionNeed } from "../loom/index.js";
import { functionLost } from "./function-lost.js";
import { battery, benchLoom, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const need = (when: string, low: number | undefined, high: number | undefined): FunctionNeed => ({
	...{ function: "lights", title: "the lamp lights", when, measures: "volts", contact: "E1.a" },
	...{ reference: "E1.b", low, high, of: "" },
});

function car(feed: string, back = "E1.b > G1") {
	const loom = benchLoom({
		parts: [
			battery,
			part("S", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
			part("E1", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		conditions: { off: {}, on: { S: "on" } },
		wires: [...grounded, wire("W1", "BAT.+ > S.1"), wire("W2", feed), wire("W3", back)],
	});
	return new Circuit({ ...loom, functions: [need("on", 11, undefined), need("off", undefined, 0.5)] });
}

test("a lamp behind its switch works; without a ground it is dark", () => {
	expect(functionLost.check(car("S.2 > E1.a"))).toEqual([]);
	const [found, ...more] = functionLost.check(car("S.2 > E1.a", "E1.b > cut"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "function-lost", severity: "warn" });
	expect(found!.why).toContain("In 'on' it has");
});

test("a lamp that is lit when it must not be stops the work", () => {
	const [found] = functionLost.check(car("S.1 > E1.a"));
	expect(found).toMatchObject({ severity: "stop" });
	expect(found!.why).toContain("at most 0.5 V is needed");
	expect(found!.path.slice(0, 3)).toEqual(["BAT.+", "W1", "S.1"]);
});
