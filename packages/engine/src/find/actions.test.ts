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

it("a plug that is not likely the cause is wiggled while watching rather than taken off", () => {
	const lock = faults.find((f) => f.id === "connector not locked:X-ECUB")!;
	const [other, third] = ["fuse blown:F11", "fuse blown:F12"].map((id) => faults.find((f) => f.id === id)!);
	const [first, second] = equally([other!, third!]);
	const weighed = [
		{ ...first!, posterior: 0.45 },
		{ ...second!, posterior: 0.45 },
		{ ...equally([lock])[0]!, posterior: 0.1 },
	];
	const action = rateActions(car.converted, weighed).find(({ part }) => part === "X-ECUB");
	expect(action).toMatchObject({ kind: "wiggle", text: expect.stringContaining("without pulling it") });
	expect(action!.minutes).toBeLessThan(3);
});

it("a relay that may be bad changes places with one of its kind; what comes of it tells the three cases apart", () => {
	const dead = faults.find(({ inParts }) => car.converted.parts.get(inParts[0] ?? "")?.kind === "relay")!;
	const relay = dead.inParts[0]!;
	const seat = faults.find(({ kind, shakenBy }) => kind === "relay not seated" && shakenBy === relay)!;
	const other = faults.find((f) => f.id === "fuse blown:F11")!;
	const swap = rateActions(car.converted, equally([dead, seat, other])).find(({ kind }) => kind === "swap")!;
	expect(swap.part).toBe(relay);
	const twin = [...car.converted.parts.values()].find(
		({ id }) => id !== relay && swap.text.includes(`(${id}`),
	);
	expect(twin?.kind, swap.text).toBe("relay");
	expect(forbiddenWork(car.converted, [twin!.id])).toBeUndefined();
	// Three equal cases, each told with 0.85 to 0.96: I = H(0.313, 0.297, 0.39) - (0.56 + 0.67 + 0.28) / 3 bits.
	expect(swap.bits).toBeCloseTo(1.572 - 0.502, 1);
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
