/** Two independent faults, neither of which explains what was seen alone. */
import { expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { findFaults } from "./find.js";
import type { Evidence, Occasion } from "./types.js";

const nothing: Occasion = {
	note: "",
	reseated: "",
	codes: undefined,
	units: [],
	functions: {},
	readings: [],
	bench: {},
};

const codes = (list: string[], functions: Record<string, boolean>): Evidence => ({
	title: "",
	of: "converted",
	occasions: [{ ...nothing, codes: list, units: ["ECU"], functions }],
});

it("no injector fed and no lambda heater fed: two circuits, two fuses, before any single fault", () => {
	const seen = codes(["P0201", "P0202", "P0203", "P0204", "P0030", "P0036"], { cranks: true, starts: false });
	const { faults, considered, sound } = findFaults(demoCar("main"), seen);
	expect(considered.pairs).toBeGreaterThan(0);
	expect(faults[0]!.kind).toBe("two faults");
	const path = faults[0]!.path.join(" ");
	expect(path).toMatch(/F11/);
	expect(path).toMatch(/F12/);
	expect(sound).toBeLessThan(0.01);
});

it("where one fault explains everything a pair adds nothing", () => {
	const page = ["P0118", "P0113", "P0198", "P0108", "P0103", "P0523", "P0335", "P0340", "P0365"];
	const { faults } = findFaults(demoCar("main"), codes(page, { cranks: true, starts: false }));
	expect(faults[0]!.kind).toBe("step left out");
	const pairs = faults.filter((f) => f.kind === "two faults").reduce((sum, f) => sum + f.posterior, 0);
	expect(pairs).toBeLessThan(0.01);
});
