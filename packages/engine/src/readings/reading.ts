/** What a meter would show between two contacts in a condition, with its band and its grounds. */
import {
	type Circuit,
	currentBetween,
	type Operating,
	operate,
	type Probe,
	pinNode,
	probeValue,
	REFERENCE,
} from "../circuit/index.js";
import type { Loom } from "../loom/index.js";
import { didYouMean } from "../tables/index.js";
import { forbidden } from "./forbidden.js";
import { type Meter, meterError, WORKSHOP_METER } from "./meter.js";
import { sensitivity } from "./sensitivity.js";

export type What = "ohms" | "volts" | "drop" | "amps";

export interface Question {
	readonly what: What;
	/** A contact, a joint, or `CONTACT!pin` for the part's own side. */
	readonly from: string;
	readonly to: string;
	readonly when: string;
}

/** A part whose tolerance widens the band. */
export interface Ground {
	/** In words: `wire W12`, `crimp at ECU.A12`, `cells of BAT`. */
	readonly text: string;
	/** Its share of the band's variance, 0..1. */
	readonly share: number;
}

export interface Reading {
	readonly what: What;
	readonly from: string;
	readonly to: string;
	readonly when: string;
	/** Volts, amperes or ohms; undefined where the meter shows 'open'. */
	readonly value: number | undefined;
	/** Band that holds 95 of 100 sound cars, meter included (2 standard deviations plus the meter's limit). */
	readonly low: number | undefined;
	readonly high: number | undefined;
	readonly unit: "V" | "A" | "ohm";
	readonly open: boolean;
	/** How the meter is connected, and what to mind. */
	readonly how: string;
	readonly grounds: readonly Ground[];
}

/** A question that must not or cannot be answered, with what would be right. */
export class ReadingError extends Error {
	constructor(message: string) {
		super(message);
		this.name = "ReadingError";
	}
}

/** Ohms of the ammeter or shunt put between two contacts that nothing joins. */
const AMMETER_OHMS = 0.01;

const UNITS = { ohms: "ohm", volts: "V", drop: "V", amps: "A" } as const;

/**
 * Computes a reading from the car's own network.
 * @throws ReadingError for unknown contacts, circuits never to be measured, or ohms on a live circuit
 * @throws RangeError for an unknown condition; CircuitError when the network does not settle
 */
export function takeReading(circuit: Circuit, question: Question, meter: Meter = WORKSHOP_METER): Reading {
	const { what, from, to, when } = question;
	const a = pointOf(circuit, from);
	const b = pointOf(circuit, to);
	for (const name of [from, to]) {
		const why = forbidden(circuit.loom, name.replace(/!pin$/, ""));
		if (why) throw new ReadingError(why);
	}
	const standing = circuit.standing(when);
	if (what === "ohms") refuseLive(circuit, when);
	let point = operate(circuit, standing, { dead: what === "ohms" });
	let how = HOW[what];
	let probe: Probe;
	if (what === "amps") {
		const direct = currentBetween(circuit, from, to);
		probe = direct ?? { kind: "volts", a, b };
		if (direct === undefined) {
			if (a === b) throw new ReadingError(`${from} and ${to} are the same point: no current to measure`);
			const added = [{ a, b, siemens: 1 / AMMETER_OHMS }];
			point = operate(circuit, standing, { change: { branches: [], added } });
			how = `Ammeter in line from ${from} to ${to}, which nothing joins directly. Across a supply it is a short circuit: fuse the lead.`;
		}
	} else probe = { kind: what === "ohms" ? "ohms" : "volts", a, b };
	const scale = what === "amps" && probe.kind === "volts" ? 1 / AMMETER_OHMS : 1;
	return answer(point, probe, question, meter, how, scale);
}

const HOW: Readonly<Record<What, string>> = {
	ohms: "Battery off, ohmmeter with leads zeroed.",
	volts: "Voltmeter, black lead on the second contact.",
	drop: "Voltmeter across the two contacts with the circuit working.",
	amps: "Clamp around the conductor, arrow towards the second contact.",
};

function answer(
	point: Operating,
	probe: Probe,
	question: Question,
	meter: Meter,
	how: string,
	scale: number,
): Reading {
	const unit = UNITS[question.what];
	const raw = probeValue(point, probe);
	const open = Number.isNaN(raw) || (question.what === "ohms" && raw > meter.most_ohms);
	const { what, from, to, when } = question;
	if (open)
		return {
			what,
			from,
			to,
			when,
			value: undefined,
			low: undefined,
			high: undefined,
			unit,
			open,
			how,
			grounds: [],
		};
	const value = raw * scale;
	const s = sensitivity(point, probe);
	const kind = question.what === "drop" ? "volts" : question.what;
	// The meter's own input loads the circuit: it can only pull the reading towards zero.
	const loading =
		probe.kind === "volts" && scale === 1 ? (value * s.sourceOhms) / (s.sourceOhms + meter.input_ohms) : 0;
	const half = 2 * s.deviation * scale + meterError(meter, kind, value);
	const low = value - half - Math.max(loading, 0);
	const high = value + half - Math.min(loading, 0);
	return {
		what,
		from,
		to,
		when,
		value,
		low: question.what === "ohms" ? Math.max(0, low) : low,
		high,
		unit,
		open,
		how,
		grounds: groundsOf(point, s.contributions, s.deviation),
	};
}

function groundsOf(
	point: Operating,
	contributions: readonly { branch: number; deviation: number }[],
	total: number,
): Ground[] {
	if (total === 0) return [];
	return [...contributions]
		.sort((x, y) => y.deviation - x.deviation)
		.slice(0, 4)
		.map(({ branch, deviation }) => ({
			text: ownerText(point.circuit, branch),
			share: (deviation / total) ** 2,
		}))
		.filter((ground) => ground.share > 0.01);
}

/** A branch in words. */
export function ownerText(circuit: Circuit, branch: number): string {
	const { what, id, element } = circuit.branches[branch]!.owner;
	switch (what) {
		case "wire":
			return `wire ${id}`;
		case "crimp":
			return `crimp of ${element} at ${id}`;
		case "mated contact":
			return `mated contact ${id}`;
		case "joint":
			return `${element} in joint ${id}`;
		case "metal":
			return `bolt of ${id}`;
		case "device":
			return `${id}: ${element}`;
	}
}

/** Node of a contact, joint or `CONTACT!pin`. */
export function pointOf(circuit: Circuit, name: string): number {
	const { loom } = circuit;
	if (name === "body") return REFERENCE;
	const plain = name.replace(/!pin$/, "");
	const known = loom.contacts.has(plain) || (plain === name && loom.joints.has(plain));
	const node = known ? circuit.node(plain === name ? name : pinNode(plain)) : undefined;
	if (node !== undefined) return node;
	const names = [...loom.contacts.keys(), ...loom.joints.keys()];
	const wanted = didYouMean(plain, names, "name a contact (PART.NAME) or a joint");
	throw new ReadingError(`no contact or joint '${plain}' in this car; ${wanted}`);
}

/** An ohmmeter on a live circuit shows nonsense and may be damaged. */
function refuseLive(circuit: Circuit, when: string): void {
	const live = liveSources(circuit.loom, circuit, when);
	if (live.length === 0) return;
	const dead = [...circuit.loom.conditions.keys()].filter(
		(c) => liveSources(circuit.loom, circuit, c).length === 0,
	);
	throw new ReadingError(
		`ohms are read with the battery off, but in '${when}' ${live.join(" and ")} is on; use ${dead.length > 0 ? dead.join(" or ") : "a condition that sets the battery off"}`,
	);
}

function liveSources(loom: Loom, circuit: Circuit, when: string): string[] {
	const { siemens } = circuit.standing(when);
	return [...loom.parts.values()]
		.filter((part) => part.kind === "battery" || part.kind === "generator")
		.filter((part) => (circuit.branchesOf.get(part.id) ?? []).some((k) => siemens[k] !== 0))
		.map((part) => part.id);
}
