/** Monitors, functions and readings as probes of the network, grouped by the condition they are seen in. */
import {
	type Change,
	type Circuit,
	Condensed,
	currentBetween,
	Kept,
	type Probe,
	pinNode,
} from "../circuit/index.js";
import type { FunctionNeed, Loom, Monitor, Quantity } from "../loom/index.js";
import { deviationOf, meterError, pointOf, type Question, WORKSHOP_METER } from "../readings/index.js";

/** A number seen in one condition: a weighted sum of probes (a monitor with a twin has two). */
export interface Seen {
	readonly when: string;
	/** Solved with all sources dead, for an ohmmeter. */
	readonly dead: boolean;
	readonly terms: readonly { readonly probe: Probe; readonly factor: number }[];
}

/** The sound car, its runs of loom taken together, solved once per condition for all that look at it. */
export class SoundCar {
	readonly net: Condensed;
	readonly #kept = new Map<string, Kept>();
	readonly #stands = new WeakMap<Change, Change>();

	/**
	 * @param probes what will be looked at: the points they stand on are kept
	 * @param needed further nodes that changes need
	 */
	constructor(
		readonly circuit: Circuit,
		probes: readonly Probe[],
		needed: ReadonlySet<number>,
	) {
		const keep = new Set(needed);
		for (const probe of probes)
			if (probe.kind !== "amps") for (const node of [probe.a, probe.b]) if (node >= 0) keep.add(node);
		this.net = new Condensed(circuit, keep);
	}

	kept(when: string, dead: boolean): Kept {
		const key = `${dead}|${when}`;
		let kept = this.#kept.get(key);
		if (kept === undefined) {
			kept = new Kept(this.net, this.net.standing(when), dead);
			this.#kept.set(key, kept);
		}
		return kept;
	}

	/** A change in the condensed network's own numbers. */
	stands(change: Change): Change {
		let stands = this.#stands.get(change);
		if (stands === undefined) {
			stands = this.net.change(change);
			this.#stands.set(change, stands);
		}
		return stands;
	}

	/** Standard deviation of a seen number on a sound car, in its unit. */
	deviation({ when, dead, terms }: Seen): number {
		const { settled } = this.kept(when, dead);
		let square = 0;
		for (const { probe, factor } of terms)
			square += (factor * deviationOf(settled, this.net.probe(probe))) ** 2;
		return Math.sqrt(square);
	}
}

/** The point a control unit itself looks at: its own side of its own pins. */
function unitPoint(circuit: Circuit, contact: string): number | undefined {
	return circuit.node(pinNode(contact)) ?? circuit.node(contact);
}

function groundOf(loom: Loom, unit: string): string | undefined {
	for (const contact of loom.contacts.values())
		if (contact.part === unit && contact.role === "ground") return contact.id;
	return undefined;
}

function batteryMinus(loom: Loom): string | undefined {
	for (const contact of loom.contacts.values())
		if (contact.role === "-" && loom.parts.get(contact.part)?.kind === "battery") return contact.id;
	return undefined;
}

/** What a row of monitors.csv or functions.csv looks at; undefined where this car lacks the points. */
export function quantityProbe(circuit: Circuit, row: Quantity, unit: string): Probe | undefined {
	if (row.measures === "amps") return currentBetween(circuit, row.contact, row.reference);
	const reference =
		row.reference || (unit ? groundOf(circuit.loom, unit) : undefined) || batteryMinus(circuit.loom);
	const a = unitPoint(circuit, row.contact);
	const b = reference === undefined ? -1 : unitPoint(circuit, reference);
	return a === undefined || b === undefined ? undefined : { kind: "volts", a, b };
}

/** A monitor's number: volts (or amps), less its twin's share. */
export function monitorSeen(circuit: Circuit, monitor: Monitor): Seen | undefined {
	const probe = quantityProbe(circuit, monitor, monitor.unit);
	if (probe === undefined) return undefined;
	const terms = [{ probe, factor: 1 }];
	if (monitor.twin !== "") {
		const twin = quantityProbe(circuit, { ...monitor, contact: monitor.twin }, monitor.unit);
		if (twin === undefined) return undefined;
		terms.push({ probe: twin, factor: -monitor.ratio });
	}
	return { when: monitor.when, dead: false, terms };
}

export function needSeen(circuit: Circuit, need: FunctionNeed): Seen | undefined {
	const probe = quantityProbe(circuit, need, "");
	return probe && { when: need.when, dead: false, terms: [{ probe, factor: 1 }] };
}

/** A meter reading's number. Amps between points that nothing joins cannot be predicted: undefined. */
export function readingSeen(circuit: Circuit, question: Question): Seen | undefined {
	if (question.what === "amps") {
		const probe = currentBetween(circuit, question.from, question.to);
		return probe && { when: question.when, dead: false, terms: [{ probe, factor: 1 }] };
	}
	const kind = question.what === "ohms" ? "ohms" : "volts";
	const probe: Probe = { kind, a: pointOf(circuit, question.from), b: pointOf(circuit, question.to) };
	return { when: question.when, dead: kind === "ohms", terms: [{ probe, factor: 1 }] };
}

/** Standard deviation to expect of a meter on a number: half its limit. */
export function meterDeviation(what: Question["what"], value: number): number {
	return meterError(WORKSHOP_METER, what === "drop" ? "volts" : what, value) / 2;
}

export { batteryMinus };
