import { expect, test } from "vitest";
import { feedConfused } from "./feed-confused.js";
import { battery, benchCircuit, grounded, part, unit, wire } from "./support/bench-loom.test-helper.js";

const car = (supply: string, wake: string) =>
	benchCircuit({
		parts: [
			battery,
			part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15", duty: "start key" }),
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "wake" }),
		],
		conditions: { off: {}, run: { KEY: "run" } },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30"),
			wire("W2", `${supply} > ECU.1`),
			wire("W3", `${wake} > ECU.3`),
			wire("W4", "ECU.2 > G1"),
		],
	});

test("a wake line on the permanent feed", () => {
	expect(feedConfused.check(car("BAT.+", "KEY.15"))).toEqual([]);
	const [found, ...more] = feedConfused.check(car("BAT.+", "KEY.30"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "feed-confused", severity: "stop" });
	expect(found!.why).toContain("never sleeps");
	expect(found!.path).toEqual(expect.arrayContaining(["KEY.30", "W3", "ECU.3"]));
});

test("a supply that was permanent and is switched now, and the other way", () => {
	const [permanent, switched] = [car("BAT.+", "KEY.15"), car("KEY.15", "KEY.15")];
	expect(feedConfused.check(permanent, permanent)).toEqual([]);
	expect(feedConfused.check(switched)).toEqual([]);
	expect(feedConfused.check(switched, permanent)[0]!.mend).toContain("terminal 30");
	expect(feedConfused.check(permanent, switched)[0]!.mend).toContain("terminal 15");
});
