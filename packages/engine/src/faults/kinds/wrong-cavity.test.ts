/** A terminal in the cavity beside: the change against the car with the wire really there. */
import { describe, expect, it } from "vitest";
import { wiresAtContact } from "../../loom/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { rewired, worstDifference } from "./volts.test-helper.js";
import { wrongCavity } from "./wrong-cavity.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = wrongCavity.list({ circuit, loom, touched: car.touched, steps: new Map() });

it("only terminals that hands put in, and only into empty cavities", () => {
	expect(faults.length).toBeGreaterThan(0);
	for (const { path } of faults) {
		expect(car.touched.contacts.has(path[0]!)).toBe(true);
		expect(wiresAtContact(loom, path[0]!).length).toBeGreaterThan(0);
		expect(wiresAtContact(loom, path[1]!)).toEqual([]);
	}
});

it("a car that nobody worked on has none", () => {
	const nothing = new Map();
	const touched = {
		...{ contacts: nothing, wires: nothing, ends: nothing },
		...{ joints: nothing, connectors: nothing, parts: nothing },
	};
	expect(wrongCavity.list({ circuit, loom, touched, steps: new Map() })).toEqual([]);
});

describe.each(faults)("$id", ({ path, patterns }) => {
	const real = rewired(loom, (_wire, _side, end) =>
		end.at === "contact" && end.contact === path[0] ? { at: "contact", contact: path[1]! } : end,
	);
	it.each(["key-on", "clutch-pressed"])("in %s", (when) => {
		expect(worstDifference(circuit, patterns[0]!.change, real, when)).toBeLessThan(1e-6);
	});
});
