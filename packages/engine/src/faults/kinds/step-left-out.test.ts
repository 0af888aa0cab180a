/** A step left out: the change against the car that the recipe makes without that step. */
import { describe, expect, it } from "vitest";
import {
	Circuit,
	CircuitError,
	type Operating,
	operate,
	separated,
	settingsOf,
	voltsAt,
} from "../../circuit/index.js";
import { applyRecipe, loomAs } from "../../recipe/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { stepLeftOut } from "./step-left-out.js";

function settled(work: () => Operating): Operating | undefined {
	try {
		return work();
	} catch (error) {
		if (error instanceof CircuitError) return undefined;
		throw error;
	}
}

describe.each(["small", "main"] as const)("%s car", (name) => {
	const car = demoCar(name);
	const { delivered, recipe, newParts } = car.tables;
	const without = new Map(
		recipe.map(({ step }) => [
			step,
			loomAs(applyRecipe(delivered, recipe, newParts, { without: new Set([step]) }).loom, "converted"),
		]),
	);
	const circuit = new Circuit(car.converted, without);
	const steps = new Map(recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]));
	const faults = stepLeftOut.list({ circuit, loom: car.converted, touched: car.touched, steps });
	const conditions = name === "small" ? [...car.converted.conditions.keys()] : ["key-on"];

	it("steps that change nothing electrical are not listed, all others are", () => {
		const listed = new Set(faults.map(({ id }) => id));
		expect(listed.size).toBe(faults.length);
		for (const { step } of recipe) {
			const changes = circuit.variants.get(step)!.length > 0;
			expect(listed.has(`step left out:${step}`), step).toBe(changes);
		}
		expect(faults.length).toBeGreaterThan(recipe.length / 3);
	});

	it.each(faults)("$id", ({ id, patterns }) => {
		const loom = without.get(id.replace("step left out:", ""))!;
		const real = new Circuit(loom);
		const shared = [...loom.contacts.keys()].filter((contact) => car.converted.contacts.has(contact));
		for (const when of conditions) {
			// In the change a part that is still there stands as at rest: conditions that set it otherwise are passed over.
			const gone = (subject: string) => loom.parts.has(subject) && !car.converted.parts.has(subject);
			if ([...settingsOf(loom, when).keys()].some(gone)) continue;
			const changed = settled(() =>
				operate(circuit, circuit.standing(when), { change: patterns[0]!.change }),
			);
			const wanted = settled(() => operate(real, real.standing(when)));
			expect(changed === undefined).toBe(wanted === undefined);
			if (changed === undefined || wanted === undefined) continue;
			let worst = 0;
			for (const contact of shared) {
				const at = [circuit.node(contact)!, circuit.node("BAT.-")!] as const;
				const there = [real.node(contact)!, real.node("BAT.-")!] as const;
				const open = separated(changed, ...at);
				expect(open, contact).toBe(separated(wanted, ...there));
				if (open) continue;
				const volts = voltsAt(changed.volts, at[0]) - voltsAt(changed.volts, at[1]);
				const byLoom = voltsAt(wanted.volts, there[0]) - voltsAt(wanted.volts, there[1]);
				worst = Math.max(worst, Math.abs(volts - byLoom));
			}
			expect(worst).toBeLessThan(1e-6);
		}
	});
});
