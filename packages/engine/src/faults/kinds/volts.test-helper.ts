/** Volts of a changed network against those of a car that really is so. */
import { type Change, Circuit, type Operating, operate, separated, voltsAt } from "../../circuit/index.js";
import type { Loom, Wire, WireEnd } from "../../loom/index.js";

/** Volts of these contacts against battery minus, NaN where open. */
function contactVolts(point: Operating, contacts: readonly string[]): number[] {
	const of = point.circuit as Circuit;
	const minus = of.node("BAT.-")!;
	return contacts.map((id) => {
		const node = of.node(id)!;
		if (separated(point, node, minus)) return Number.NaN;
		return voltsAt(point.volts, node) - voltsAt(point.volts, minus);
	});
}

/** Largest difference over all contacts that both have; infinite where one is open and the other not. */
export function worstDifference(circuit: Circuit, change: Change, real: Loom, when: string): number {
	const contacts = [...real.contacts.keys()].filter((id) => circuit.loom.contacts.has(id));
	const there = new Circuit(real);
	const changed = contactVolts(operate(circuit, circuit.standing(when), { change }), contacts);
	const wanted = contactVolts(operate(there, there.standing(when)), contacts);
	return changed.reduce((most, volts, k) => {
		const open = [volts, wanted[k]!].map(Number.isNaN);
		if (open[0] !== open[1]) return Number.POSITIVE_INFINITY;
		return open[0] ? most : Math.max(most, Math.abs(volts - wanted[k]!));
	}, 0);
}

/** The loom with every wire end put where `to` says. */
export function rewired(loom: Loom, to: (wire: string, side: "from" | "to", end: WireEnd) => WireEnd): Loom {
	const wires = [...loom.wires.values()].map((w): [string, Wire] => [
		w.id,
		{ ...w, from: to(w.id, "from", w.from), to: to(w.id, "to", w.to) },
	]);
	return { ...loom, wires: new Map(wires) };
}
