/** What holds for the whole fault set of both demo cars, before and after the conversion. */
import { describe, expect, it } from "vitest";
import { Circuit } from "../circuit/index.js";
import { applyRecipe, loomAs } from "../recipe/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { type Fault, faultKinds, faultSet } from "./index.js";

function faultsOf(
	name: "small" | "main",
	of: "delivered" | "converted",
): { circuit: Circuit; faults: Fault[] } {
	const car = demoCar(name);
	const loom = of === "delivered" ? car.delivered : car.converted;
	const { delivered, recipe, newParts } = car.tables;
	const variants = recipe.map(({ step }) => {
		const left = applyRecipe(delivered, recipe, newParts, { without: new Set([step]) });
		return [step, loomAs(left.loom, "converted")] as const;
	});
	const circuit = new Circuit(loom, of === "delivered" ? new Map() : new Map(variants));
	const steps = new Map(recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]));
	return { circuit, faults: faultSet({ circuit, loom, touched: car.touched, steps }) };
}

const cars = [
	{ name: "small", of: "delivered" },
	{ name: "small", of: "converted" },
	{ name: "main", of: "delivered" },
	{ name: "main", of: "converted" },
] as const;

describe.each(cars)("$name, $of", ({ name, of }) => {
	const { circuit, faults } = faultsOf(name, of);

	it("every fault has an id of its own", () => {
		expect(new Set(faults.map(({ id }) => id)).size).toBe(faults.length);
	});

	it("the weights of its patterns sum to 1", () => {
		for (const { id, patterns } of faults) {
			const sum = patterns.reduce((total, { weight }) => total + weight, 0);
			expect(Math.abs(sum - 1), id).toBeLessThan(1e-12);
			for (const { weight } of patterns) expect(weight, id).toBeGreaterThan(0);
		}
	});

	it("its chance is one, and it says where it is and what to do", () => {
		for (const { id, prior, where, mend, path, kind } of faults) {
			expect(prior, id).toBeGreaterThan(0);
			expect(prior, id).toBeLessThan(0.1);
			for (const text of [where, mend, kind]) expect(text.trim(), id).not.toBe("");
			expect(path.length, id).toBeGreaterThan(0);
			expect(`${where} ${mend} ${path.join(" ")}`, id).not.toMatch(/undefined|NaN|\[object/);
		}
	});

	it("it changes branches and joins points that there are", () => {
		for (const { id, patterns } of faults)
			for (const { change } of patterns) {
				const branches = change.branches.map(({ branch }) => branch);
				expect(new Set(branches).size, id).toBe(branches.length);
				for (const branch of branches) expect(circuit.branches[branch], id).toBeDefined();
				for (const { a, b, siemens } of change.added) {
					expect(a, id).not.toBe(b);
					expect(siemens, id).toBeGreaterThan(0);
					for (const node of [a, b]) expect(node < circuit.nodes.length && node >= -1, id).toBe(true);
				}
			}
	});

	it("all but the sound pattern of a loose housing change something", () => {
		for (const { id, patterns, shakenBy } of faults) {
			const idle = patterns.filter(({ change }) => change.branches.length + change.added.length === 0);
			// A throw of the dice may also find every contact of a housing good.
			if (shakenBy === "") expect(idle, id).toEqual([]);
			else expect(idle.length, id).toBeLessThan(patterns.length);
		}
	});

	it("no part marked pyrotechnic is listed as dead, for nothing may be tested or replaced there", () => {
		const marked = (id: string) => circuit.loom.parts.get(id)?.marks.includes("pyrotechnic") ?? false;
		const dead = faults.filter(({ kind }) => /dead|blown|seated/.test(kind));
		for (const { id, path } of dead) expect(path.some(marked), id).toBe(false);
	});
});

it("every kind has a title and a source", () => {
	expect(new Set(faultKinds.map(({ kind }) => kind)).size).toBe(faultKinds.length);
	for (const { title, source } of faultKinds) {
		expect(title).not.toBe("");
		expect(source).toMatch(/no source|reference\/|MIL-HDBK/);
	}
});
