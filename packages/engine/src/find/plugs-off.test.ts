/** With a unit's plug off a chafed wire still touches the body: the fault must stay with the wire, not with the pin. */
import { expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { findFaults } from "./find.js";
import type { Evidence } from "./types.js";

const car = demoCar("small");
const plug = car.converted.contacts.get("CU.7")!.connector;
const evidence = (when: string, value: number | "open"): Evidence => ({
	title: "",
	of: "converted",
	occasions: [
		{
			...{ note: "", reseated: "", codes: undefined, units: [], functions: {}, bench: {} },
			readings: [{ what: "ohms", from: "CU.7", to: "BAT.-", when, value }],
		},
	],
});

it("no ohms from the wire's terminal to the body, plug off: a short of that wire leads the faults", () => {
	const { faults, contradictions } = findFaults(car, evidence(`battery-off; ${plug}=unmated`, 0.1));
	expect(faults[0]!.kind).toBe("short to ground");
	expect(faults.slice(0, 3).map(({ id }) => id)).toContain("short to ground:wire:W22");
	expect(contradictions.every((line) => !line.includes("cannot be compared"))).toBe(true);
});

it("a condition that this car does not have is named, not an error", () => {
	const { contradictions } = findFaults(car, evidence("battery-off; NOPLUG=unmated", 0.1));
	expect(contradictions.join()).toMatch(/no 'NOPLUG' in this car/);
});
