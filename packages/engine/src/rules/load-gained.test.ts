import { expect, test } from "vitest";
import { loadGained } from "./load-gained.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const car = (feed: string) =>
	benchCircuit({
		parts: [
			battery,
			part("S", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
			part("E1", "lamp", ["a", "b"], { values: { watts: 21 } }),
		],
		conditions: { off: {}, on: { S: "on" } },
		wires: [...grounded, wire("W1", "BAT.+ > S.1"), wire("W2", `${feed} > E1.a`), wire("W3", "E1.b > G1")],
	});

test("a lamp that was off as delivered and is lit now", () => {
	expect(loadGained.check(car("S.2"), car("S.2"))).toEqual([]);
	expect(loadGained.check(car("S.1"))).toEqual([]);
	const [found, ...more] = loadGained.check(car("S.1"), car("S.2"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "load-gained", severity: "warn" });
	expect(found!.why).toContain("In 'off' it was off");
	expect(found!.path.at(-1)).toBe("E1");
});
