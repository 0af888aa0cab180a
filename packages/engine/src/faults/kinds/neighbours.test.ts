/** Terminals in each other's cavity: the change against the car with the two wires really exchanged. */
import { describe, expect, it } from "vitest";
import type { Loom } from "../../loom/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { swapped } from "./neighbours.js";
import { rewired, worstDifference } from "./volts.test-helper.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = swapped.list({ circuit, loom, touched: car.touched, steps: new Map() });

function exchanged(one: string, two: string): Loom {
	return rewired(loom, (_wire, _side, end) => {
		if (end.at !== "contact" || (end.contact !== one && end.contact !== two)) return end;
		return { at: "contact", contact: end.contact === one ? two : one };
	});
}

it("only pairs that were both worked on are listed", () => {
	expect(faults.length).toBeGreaterThan(3);
	for (const { path } of faults) for (const id of path) expect(car.touched.contacts.has(id)).toBe(true);
});

describe.each(faults)("$id", ({ path, patterns }) => {
	const [one, two] = path as [string, string];
	it.each(["key-on", "cranking"])("in %s", (when) => {
		expect(worstDifference(circuit, patterns[0]!.change, exchanged(one, two), when)).toBeLessThan(1e-6);
	});
});
