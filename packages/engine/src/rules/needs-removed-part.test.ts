import { expect, test } from "vitest";
import { loadLost } from "./load-lost.js";
import { needsRemovedPart } from "./needs-removed-part.js";
import {
	battery,
	benchCircuit,
	connector,
	grounded,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const lamp = part("E1", "lamp", ["a", "b"], { values: { watts: 21 } });
const relayed = (removed: boolean, bridge = "") =>
	benchCircuit({
		parts: [battery, lamp, ...(removed ? [] : [part("S", "switch", ["1", "2"], { positions: "on:1-2" })])],
		wires: [
			...grounded,
			wire("W1", `BAT.+ > ${removed ? bridge || "stowed" : "S.1"}`),
			wire("W2", `${removed ? "stowed" : "S.2"} > E1.a`),
			wire("W3", "E1.b > G1"),
		],
	});

test("a lamp that was fed through a switch taken out", () => {
	const before = relayed(false);
	expect(needsRemovedPart.check(relayed(true, "E1.a"), before)).toEqual([]);
	const after = relayed(true);
	const [found, ...more] = needsRemovedPart.check(after, before);
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "needs-removed-part", severity: "warn" });
	expect(found!.why).toContain("through S, taken out");
	expect(loadLost.check(after, before)).toEqual([]);
});

/** A loop in the plug of another unit ties the sensor's return to its own. */
const looped = (plug: boolean, tie = "stowed") =>
	benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 4: "sensor return", 5: "input pull-up" }),
			part("B1", "thermistor", ["a", "b"]),
			...(plug
				? [
						connector("X1"),
						unit("GCU", "control unit", { 1: "supply", 2: "ground", 30: "unused" }, { connector: "X1" }),
					]
				: []),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.5 > B1.a"),
			wire("W4", `B1.b > ${plug ? "GCU.30" : tie}`),
			wire("W5", `ECU.4 > ${plug ? "GCU.30" : "stowed"}`),
		],
	});

test("a return that was tied in a plug taken out", () => {
	expect(needsRemovedPart.check(looped(false, "ECU.4"), looped(true))).toEqual([]);
	const [found, ...more] = needsRemovedPart.check(looped(false), looped(true));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ severity: "stop", path: ["B1", "B1.b"] });
	expect(found!.why).toContain("X1");
});
