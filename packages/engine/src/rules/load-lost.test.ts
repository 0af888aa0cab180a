import { expect, test } from "vitest";
import { loadLost } from "./load-lost.js";
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

test("a lamp that lit as delivered and does not now", () => {
	expect(loadLost.check(car("S.2"), car("S.2"))).toEqual([]);
	expect(loadLost.check(car("cut"))).toEqual([]);
	const [found, ...more] = loadLost.check(car("cut"), car("S.2"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "load-lost", severity: "warn" });
	expect(found!.why).toBe("In 'on' it had 12.5 V as delivered and has 0 V now.");
	expect(found!.path).toEqual(expect.arrayContaining(["S.2", "W2", "E1"]));
});
