/** The car at one point of the power-up: what is live, what has moved, what a meter shows. */
import {
	type Change,
	type Circuit,
	CircuitError,
	currentBetween,
	type Operating,
	operate,
	type Probe,
	probeValue,
	REFERENCE,
	separated,
	settingsOf,
	voltsAt,
} from "../../circuit/index.js";
import { placeOf } from "../../faults/index.js";
import { forbidden, meterError, pointOf, sensitivity, WORKSHOP_METER } from "../../readings/index.js";
import { contactText } from "../../rules/support/words.js";
import { LEAST_OPEN, limits } from "../detect.js";
import type { StageReading } from "./types.js";

/** Volts from which on a point counts as fed, not as held by a unit's own resistance. Common practice, no source. */
const FEED_VOLTS = 6;
/** Volts that a voltmeter may show on a point that nothing joins to anything. Common practice, no source. */
const FLOATING_VOLTS = 0.5;

const UNITS = { volts: "V", amps: "A", ohms: "ohm" } as const;

export interface StateOptions {
	/** What differs from the condition: a test lamp in the line. Readings are then no questions of finding. */
	readonly change?: Change;
	/** All sources dead, for ohms. */
	readonly dead?: boolean;
}

export class CarState {
	readonly point: Operating;
	readonly #asked: boolean;

	/** @throws CircuitError when it does not settle */
	constructor(
		readonly circuit: Circuit,
		readonly when: string,
		options: StateOptions = {},
	) {
		// Not circuit.standing: some hundred conditions are looked at once, and it keeps every one.
		this.point = operate(circuit, circuit.standingOf(settingsOf(circuit.loom, when), when), options);
		this.#asked = options.change === undefined;
	}

	/** Undefined where the car keeps switching to and fro in that condition. */
	static settled(circuit: Circuit, when: string): CarState | undefined {
		try {
			return new CarState(circuit, when);
		} catch (error) {
			if (error instanceof CircuitError) return undefined;
			throw error;
		}
	}

	/** Does a feed reach it, not just what a unit holds a line at? */
	isFed(contact: string): boolean {
		return this.#volts(contact) > FEED_VOLTS;
	}

	/** Volts of a contact's terminal against the body, without sign; 0 where nothing joins it to there. */
	#volts(contact: string): number {
		const node = this.circuit.node(contact)!;
		if (node === REFERENCE || separated(this.point, node, REFERENCE)) return 0;
		return Math.abs(voltsAt(this.point.volts, node));
	}

	/** Contacts that a feed reaches here and did not before. */
	newlyFed(before: CarState | undefined): string[] {
		return [...this.circuit.loom.contacts.keys()].filter((id) => this.isFed(id) && !before?.isFed(id));
	}

	/** What switches by itself, by part and element, and the state it is in. */
	states(): Map<string, { readonly part: string; readonly element: string; readonly state: number }> {
		const { automata } = this.point.standing;
		return new Map(
			automata.map(({ spec: { part, element } }, k) => [
				`${part} ${element}`,
				{ part, element, state: this.point.states[k]! },
			]),
		);
	}

	/** Undefined where a point is never measured, or no current can be clamped between the two. */
	read(what: "volts" | "amps" | "ohms", from: string, to: string): StageReading | undefined {
		const { circuit, point } = this;
		if (forbidden(circuit.loom, from) || forbidden(circuit.loom, to)) return undefined;
		const probe: Probe | undefined =
			what === "amps"
				? currentBetween(circuit, from, to)
				: { kind: what, a: pointOf(circuit, from), b: pointOf(circuit, to) };
		if (probe === undefined) return undefined;
		const value = probeValue(point, probe);
		return {
			question: this.#asked ? { what, from, to, when: this.when } : undefined,
			from: contactText(circuit.loom, from),
			to: contactText(circuit.loom, to),
			...this.#band(what, probe, value),
			unit: UNITS[what],
			place: placeOf(circuit.loom, from),
		};
	}

	#band(
		what: "volts" | "amps" | "ohms",
		probe: Probe,
		value: number,
	): Pick<StageReading, "value" | "low" | "high"> {
		if (what === "ohms") {
			if (Number.isNaN(value) || value >= LEAST_OPEN)
				return { value: undefined, low: LEAST_OPEN, high: undefined };
			return { value, ...limits(value, sensitivity(this.point, probe).deviation) };
		}
		if (Number.isNaN(value)) return { value: undefined, low: -FLOATING_VOLTS, high: FLOATING_VOLTS };
		const half = 2 * sensitivity(this.point, probe).deviation + meterError(WORKSHOP_METER, what, value);
		return { value, low: value - half, high: value + half };
	}
}
