/** Terminals in each other's cavity: the change against the car with the two wires really exchanged. */
import { describe, expect, it } from "vitest";
import { Circuit, type Operating, operate, separated, voltsAt } from "../../circuit/index.js";
import type { Loom, Wire, WireEnd } from "../../loom/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { swapped } from "./neighbours.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = swapped.list({ circuit, loom, touched: car.touched, steps: new Map() });

function exchanged(one: string, two: string): Loom {
	const other = (end: WireEnd): WireEnd => {
		if (end.at !== "contact" || (end.contact !== one && end.contact !== two)) return end;
		return { at: "contact", contact: end.contact === one ? two : one };
	};
	const wires = [...loom.wires.values()].map((w): [string, Wire] => [
		w.id,
		{ ...w, from: other(w.from), to: other(w.to) },
	]);
	return { ...loom, wires: new Map(wires) };
}

/** Volts of every contact against battery minus, NaN where open. */
function contactVolts(point: Operating): number[] {
	const of = point.circuit as Circuit;
	const minus = of.node("BAT.-")!;
	return [...loom.contacts.keys()].map((id) => {
		const node = of.node(id)!;
		if (separated(point, node, minus)) return Number.NaN;
		return voltsAt(point.volts, node) - voltsAt(point.volts, minus);
	});
}

it("only pairs that were both worked on are listed", () => {
	expect(faults.length).toBeGreaterThan(3);
	for (const { path } of faults) for (const id of path) expect(car.touched.contacts.has(id)).toBe(true);
});

describe.each(faults)("$id", ({ path, patterns }) => {
	const [one, two] = path as [string, string];
	const real = new Circuit(exchanged(one, two));
	it.each(["key-on", "cranking"])("in %s", (when) => {
		const changed = operate(circuit, circuit.standing(when), { change: patterns[0]!.change });
		const wanted = contactVolts(operate(real, real.standing(when)));
		const worst = contactVolts(changed).reduce((most, volts, k) => {
			const off =
				Number.isNaN(volts) !== Number.isNaN(wanted[k]!)
					? Number.POSITIVE_INFINITY
					: Math.abs(volts - wanted[k]!);
			return Number.isNaN(off) ? most : Math.max(most, off);
		}, 0);
		expect(worst).toBeLessThan(1e-6);
	});
});
