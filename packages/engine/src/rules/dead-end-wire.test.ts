import { expect, test } from "vitest";
import { deadEndWire } from "./dead-end-wire.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const inline = unit("X1", "connector", { "1a": "a", "1b": "b" });
// Cavities are named like the contact in the helper: both halves of an in-line cavity share one.
const x1 = { ...inline, contacts: inline.contacts.map((c) => ({ ...c, connector: "X1", cavity: "1" })) };
const ecu = unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "input pull-up" });
const lever = part("S1", "switch", ["1", "2"], { positions: "off:; on:1-2" });

const check = (...runs: string[]) =>
	deadEndWire.check(
		benchCircuit({
			parts: [battery, x1, ecu, lever],
			joints: [joint("G1", "ground"), joint("SP")],
			wires: [...grounded, ...runs.map((run, k) => wire(`L${k + 1}`, run))],
		}),
	);

test("a wire on through an in-line connector is right; one that ends in its cavity is not", () => {
	expect(check("S1.1 > X1.1a", "X1.1b > ECU.3")).toEqual([]);
	const [found, ...more] = check("S1.1 > X1.1a");
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "dead-end-wire", severity: "warn" });
	expect(found!.why).toContain("hangs at S1.1 but leads to nothing else: it ends at X1.1b");
	expect(found!.path).toEqual(["S1.1", "L1", "X1.1a", "X1.1b"]);
});

test("a splice with one wire, a wire between two empty places", () => {
	expect(check("S1.1 > SP")).toHaveLength(1);
	expect(check("X1.1a > SP")[0]!.why).toContain("no part at either end");
});

test("stowed wires and ground points", () => {
	expect(check("S1.1 > SP", "SP > stowed")).toEqual([]);
	expect(check("S1.1 > G1")).toEqual([]);
});
