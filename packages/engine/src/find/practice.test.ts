/** The practice cases of the demo car (common practice, no source): what is wrong must come first. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { findFaults } from "./find.js";
import { parseEvidence } from "./parse-evidence.js";

const car = demoCar("main");

function found(name: string) {
	const file = fileURLToPath(new URL(`../../../../demo/main/practice/${name}.json`, import.meta.url));
	return findFaults(car, parseEvidence(readFileSync(file, "utf8"), `${name}.json`));
}

describe("practice cases", () => {
	it("a page of sensor codes: the step that ties the returns to the unit was left out", () => {
		const { faults, sound, next } = found("return-not-tied");
		expect(faults[0]!.kind).toBe("step left out");
		expect(faults[0]!.where).toMatch(/tie the engine sensor returns/);
		expect(faults[0]!.posterior).toBeGreaterThan(2 * faults[1]!.posterior);
		expect(sound).toBeLessThan(1e-3);
		expect(next!.bits).toBeGreaterThan(0);
	});

	it("cranks, does not start, 87 low, relay good on the bench: it is not seated", () => {
		const { faults, actions } = found("relay-not-seated");
		expect(actions.map((a) => a.part)).toContain("K1");
		expect(faults[0]!.id).toBe("relay not seated:K1");
		expect(faults.findIndex((f) => f.kind === "device dead" && f.path.includes("K1"))).toBeGreaterThan(0);
	});

	it("codes that change with each reseating: the connector is not locked, ahead of the actuator", () => {
		const { faults, actions } = found("connector-not-locked");
		expect(faults[0]!.id).toBe("connector not locked:X-ECUB");
		expect(actions[0]!.part).toBe("X-ECUB");
		const actuator = faults.find((f) => f.kind === "device dead");
		expect(actuator?.posterior ?? 0).toBeLessThan(faults[0]!.posterior / 100);
	});

	it("twice the ohms between the bus leads: the new bus end hangs on one lead only", () => {
		const { faults, settled } = found("bus-end-on-one-lead");
		expect(faults[0]!.id).toBe("step left out:43");
		expect(faults.slice(1, 5).map(({ id }) => id)).toContain("open:joint:SN10:N12");
		expect(faults[0]!.alike).toContain("open:joint:SN10:N12");
		expect(settled).toBe(true);
	});

	it("5 V on both sides of the neutral switch: its ground was not led on", () => {
		const { faults, sound } = found("neutral-not-seen");
		expect(faults[0]!.id).toBe("step left out:35");
		expect(faults.slice(0, 5).every(({ path }) => /W424|N09|SN08/.test(path.join(" ")))).toBe(true);
		expect(sound).toBeLessThan(1e-3);
	});

	it("a coolant code between dry days: the circuit opens at one time and not at another", () => {
		const [first] = found("coolant-code-comes-and-goes").faults;
		expect(first!.path.join(" ")).toMatch(/B-ECT|ECU\.B28|W3/);
		expect(first!.comesAndGoes).toBeGreaterThan(0.99);
	});

	it("no reversing lamps and no horn: one fault in each", () => {
		const { faults, considered } = found("reversing-lamps-and-horn");
		expect(considered.pairs).toBeGreaterThan(0);
		expect(faults[0]!.kind).toBe("two faults");
		expect(faults[0]!.id.split(" & ").sort()).toEqual(["device dead:K8:coil", "step left out:29"]);
	});

	it("a lead at no ohms against the body: pinched where both ends of it read the least", () => {
		const { faults } = found("pinched-lead");
		expect(faults[0]!.id).toBe("short to ground:wire:W422b+b");
		expect(faults[0]!.posterior).toBeGreaterThan(0.5);
	});

	it("posteriors sum to one at most, and grounds speak for the first", () => {
		const { faults, sound } = found("return-not-tied");
		const sum = faults.reduce((total, f) => total + f.posterior, sound);
		expect(sum).toBeLessThanOrEqual(1 + 1e-9);
		expect(sum).toBeGreaterThan(0.95);
		expect(faults[0]!.grounds.some((g) => g.times > 10)).toBe(true);
	});
});
