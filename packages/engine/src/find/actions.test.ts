/** Reseating is proposed where it tells something, and never at a restraint circuit. */
import { expect, it } from "vitest";
import { forbiddenWork } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { rateActions } from "./actions.js";
import { Finder } from "./find.js";
import type { Weighed } from "./weighing.js";

const car = demoCar("main");
const { faults } = new Finder(car, "converted");
const equally = (list: typeof faults): Weighed[] =>
	list.map((fault) => ({
		fault,
		posterior: 1 / list.length,
		first: -1,
		comesAndGoes: 0,
		patterns: fault.patterns.map((pattern) => ({ pattern, chance: pattern.weight })),
	}));

it("two suspects, one of them an open lock: reseating that connector says nearly which", () => {
	const lock = faults.find((f) => f.id === "connector not locked:X-ECUB")!;
	const other = faults.find((f) => f.id === "fuse blown:F11")!;
	const [action] = rateActions(car.converted, equally([lock, other]));
	expect(action!.part).toBe("X-ECUB");
	// A coin whose sides show with 0.85 and 0.02: I = H(0.435) - (H(0.85) + H(0.02)) / 2 = 0.988 - 0.376 bits.
	expect(action!.bits).toBeCloseTo(0.612, 2);
});

it("no plug, fuse or relay of a restraint circuit is ever proposed, and its mends defer to the maker", () => {
	const restraint = faults.filter((f) => forbiddenWork(car.converted, f.path) !== undefined);
	expect(restraint.length).toBeGreaterThan(100);
	for (const fault of restraint) {
		expect(fault.mend).toMatch(/maker's procedure/);
		expect(
			rateActions(car.converted, equally([fault, faults[0]!])).every((a) => a.part !== fault.shakenBy),
		).toBe(true);
	}
	for (const plug of ["X-DRV", "X-PAS", "X-RCU", "X-CS", "F33"])
		expect(forbiddenWork(car.converted, [plug]), plug).toBe("pyrotechnic");
});
