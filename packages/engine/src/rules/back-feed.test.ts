import { expect, test } from "vitest";
import { backFeed } from "./back-feed.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const fuse = (id: string) => part(id, "fuse", ["in", "out"], { values: { amps: 10 } });
const lamp = (id: string) => part(id, "lamp", ["a", "b"], { values: { watts: 21 } });

function car(runs: readonly string[], parts: Parameters<typeof benchCircuit>[0]["parts"] = []) {
	return benchCircuit({
		parts: [battery, fuse("F1"), fuse("F2"), lamp("E1"), lamp("E2"), ...parts],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > F1.in", 4),
			wire("W2", "BAT.+ > F2.in", 4),
			...runs.map((run, k) => wire(`L${k + 1}`, run)),
		],
	});
}

const apart = ["F1.out > E1.a", "E1.b > G1", "F2.out > E2.a", "E2.b > G1"];

test("two lamps on two fuses of their own", () => {
	expect(backFeed.check(car(apart))).toEqual([]);
});

test("two feeds joined behind their fuses: each fuse leaves its lamp lit", () => {
	const found = backFeed.check(car([...apart, "E1.a > E2.a"]));
	expect(found.map((f) => f.where)).toEqual([
		expect.stringContaining("F1: E1"),
		expect.stringContaining("F2: E2"),
	]);
	expect(found[0]).toMatchObject({ rule: "back-feed", severity: "warn" });
	expect(found[0]!.path).toEqual([
		"BAT.+",
		"W2",
		"F2.in",
		"F2",
		"F2.out",
		"L3",
		"E2.a",
		"L5",
		"E1.a",
		"E1",
		"F1.in",
		"F1.out",
	]);
});

// Both lamps lose their common ground: each is fed backwards through the other, in series.
test("a feed that comes backwards through another lamp", () => {
	const found = backFeed.check(
		car(["F1.out > E1.a", "E1.b > S1", "F2.out > S1", "E2.a > E1.a", "E2.b > G1"]),
	);
	expect(found.map((f) => f.where.slice(0, 2))).toContain("F1");
});

test("a diode keeps the two feeds apart in one direction only", () => {
	const diode = part("D1", "diode", ["a", "b"]);
	const found = backFeed.check(car([...apart, "E1.a > D1.a", "D1.b > E2.a"], [diode]));
	expect(found.map((f) => f.where.slice(0, 2))).toEqual(["F2"]);
});

test("a unit's second supply on another fuse is no back-feed", () => {
	const ecu = unit("ECU", "control unit", { 1: "supply", 2: "supply", 3: "ground" });
	expect(backFeed.check(car([...apart, "F1.out > ECU.1", "F2.out > ECU.2", "ECU.3 > G1"], [ecu]))).toEqual(
		[],
	);
});

test("a second speed through a series resistor is meant, and a blocking LED draws nothing", () => {
	const fan = car(
		["F1.out > R1.a", "R1.b > M1.a", "F2.out > M1.a", "M1.b > G1"],
		[
			part("R1", "resistor", ["a", "b"], { values: { ohms: 0.5 } }),
			part("M1", "motor", ["a", "b"], { values: { ohms: 1 } }),
		],
	);
	expect(backFeed.check(fan)).toEqual([]);
	const led = car(
		["F1.out > D1.a", "D1.b > ECU.3", "F2.out > ECU.1", "ECU.2 > G1"],
		[part("D1", "led", ["a", "b"]), unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "low-side" })],
	);
	expect(backFeed.check(led)).toEqual([]);
});
