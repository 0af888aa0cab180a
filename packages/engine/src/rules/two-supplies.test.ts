import { expect, test } from "vitest";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";
import { twoSupplies } from "./two-supplies.js";

const fuse = (id: string) => part(id, "fuse", ["in", "out"], { values: { amps: 10 } });
const lamp = (id: string) => part(id, "lamp", ["a", "b"], { values: { watts: 10 } });
const car = (...runs: string[]) =>
	benchCircuit({
		parts: [
			battery,
			part("GEN", "generator", ["B+", "-"]),
			fuse("FM"),
			fuse("F1"),
			fuse("F2"),
			lamp("E1"),
			lamp("E2"),
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "sensor supply", 4: "sensor supply" }),
		],
		joints: [joint("G1", "ground"), joint("S1"), joint("S2"), joint("S3")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > FM.in"),
			wire("W2", "FM.out > GEN.B+"),
			wire("W3", "BAT.+ > F1.in"),
			wire("W4", "BAT.+ > F2.in"),
			wire("W5", "F1.out > S1"),
			wire("W6", "F2.out > S2"),
			wire("W7", "S1 > E1.a"),
			wire("W8", "S2 > E2.a"),
			wire("W9", "ECU.3 > S3"),
			...runs.map((run, k) => wire(`L${k}`, run)),
		],
	});

test("each circuit on its own fuse; the main fuse between battery and generator is meant", () => {
	expect(twoSupplies.check(car())).toEqual([]);
});

test("two fuses' circuits joined: one finding for both", () => {
	const [found, ...more] = twoSupplies.check(car("S1 > S2"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "two-supplies", severity: "warn" });
	expect(found!.where).toContain("F1");
	expect(found!.where).toContain("F2");
	expect(found!.path).toContain("L0");
});

test("a sensor supply joined with another, or with the battery's feed", () => {
	expect(twoSupplies.check(car("ECU.4 > S3"))[0]!.path).toEqual(["ECU.3", "W9", "S3", "L0", "ECU.4"]);
	const [found] = twoSupplies.check(car("S1 > S3"));
	expect(found).toMatchObject({ severity: "stop" });
	expect(found!.why).toContain("12 V on sensors");
});
