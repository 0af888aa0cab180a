/** What is said of a ranked fault, on the small car: numbers by its divider of 2200 and 2252 ohm at 5 V. */
import { describe, expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { explainFault, findFaults } from "./find.js";
import type { Evidence } from "./types.js";

const car = demoCar("small");
const evidence: Evidence = {
	title: "",
	of: "converted",
	occasions: [
		{
			...{ note: "", reseated: "", codes: ["B1A02"], units: ["CU"], functions: { "unit-awake": true } },
			readings: [{ what: "volts", from: "CU.7", to: "CU.2", when: "key-on", value: 5 }],
			bench: {},
		},
	],
};
const { faults } = findFaults(car, evidence);
const open = explainFault(car, evidence, "open:wire:W22");

describe("an open sensor wire", () => {
	it("stands among the ranked, its path in order and in words", () => {
		expect(faults.map(({ id }) => id)).toContain(open.id);
		expect(open.path.map(({ id }) => id)).toContain("W22");
		expect(open.path.find(({ id }) => id === "W22")).toMatchObject({ what: "wire" });
		for (const { text } of open.path) expect(text).not.toBe("");
	});

	it("the reading taken: 5 V predicted and read, where a sound car shows 5 x 2252 / 4452 = 2.53 V", () => {
		const [taken] = open.taken;
		expect(taken!.value).toBe(5);
		expect(taken!.shows).toEqual([{ text: "about 5 V", chance: 1 }]);
		expect(taken!.sound).toBe("about 2.53 V");
	});

	it("readings not taken, and what they would have to show to speak against it", () => {
		expect(open.notTaken.length).toBeGreaterThan(0);
		for (const { shows, value } of open.notTaken) {
			expect(value).toBeUndefined();
			expect(shows.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
		}
		expect(open.refutes.length).toBeGreaterThan(0);
		for (const { chance, text } of open.refutes) {
			expect(chance).toBeGreaterThan(0);
			expect(chance).toBeLessThanOrEqual(1 + 1e-12);
			expect(text).toMatch(/anything but /);
		}
		const chances = open.refutes.map(({ chance }) => chance);
		expect(chances).toEqual([...chances].sort((x, y) => y - x));
	});

	it("nothing speaks against it; a short to ground would show 0 V, and the entry to repeat is named", () => {
		expect(open.against).toEqual([]);
		const { against, taken } = explainFault(car, evidence, "short to ground:wire:W22");
		expect(taken[0]!.shows[0]!.text).toBe("about 0 V");
		expect(against.map(({ entry }) => entry)).toContainEqual({
			kind: "reading",
			question: { what: "volts", from: "CU.7", to: "CU.2", when: "key-on" },
		});
	});

	it("no such fault", () => {
		expect(() => explainFault(car, evidence, "rust:everywhere")).toThrow(/no fault 'rust:everywhere'/);
	});
});
