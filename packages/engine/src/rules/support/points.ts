/** Solved networks that rules look at, each solved once per circuit. */
import {
	type BranchChange,
	type Change,
	type Circuit,
	CircuitError,
	type Operating,
	operate,
	type Standing,
	settingsOf,
} from "../../circuit/index.js";

/** A listed condition of the loom, settled. */
export interface Settled {
	readonly condition: string;
	/** Its settings, those of the conditions it is like included. */
	readonly settings: ReadonlyMap<string, string>;
	readonly point: Operating;
}

/** A condition in which the network keeps switching to and fro. */
export interface Unsettled {
	readonly condition: string;
	readonly message: string;
	readonly parts: readonly string[];
}

interface Solved {
	readonly settled: readonly Settled[];
	readonly unsettled: readonly Unsettled[];
}

const solved = new WeakMap<Circuit, Solved>();
const deadPoints = new WeakMap<Circuit, Operating>();

/** Every listed condition, those that settle and those that do not, in table order. */
export function conditionsOf(circuit: Circuit): Solved {
	let found = solved.get(circuit);
	if (found === undefined) {
		found = solveAll(circuit);
		solved.set(circuit, found);
	}
	return found;
}

function solveAll(circuit: Circuit): Solved {
	const settled: Settled[] = [];
	const unsettled: Unsettled[] = [];
	for (const condition of circuit.loom.conditions.keys()) {
		try {
			const point = operate(circuit, circuit.standing(condition));
			settled.push({ condition, settings: settingsOf(circuit.loom, condition), point });
		} catch (error) {
			if (!(error instanceof CircuitError)) throw error;
			unsettled.push({ condition, message: error.message, parts: error.where });
		}
	}
	return { settled, unsettled };
}

/** Settled conditions in which the car stands whole: battery on, nothing pulled, nothing unmated. */
export function wholeConditions(circuit: Circuit): readonly Settled[] {
	return conditionsOf(circuit).settled.filter(({ settings }) => isWhole(circuit, settings));
}

/** Battery on, nothing pulled, nothing unmated. */
export function isWhole(circuit: Circuit, settings: ReadonlyMap<string, string>): boolean {
	for (const [subject, state] of settings) {
		if (state === "pulled" || state === "unmated" || state === "in hand") return false;
		if (state === "off" && circuit.loom.parts.get(subject)?.kind === "battery") return false;
	}
	return true;
}

/**
 * The operating point under any settings; undefined where it does not settle.
 * @param name for messages
 */
export function pointWith(
	circuit: Circuit,
	settings: ReadonlyMap<string, string>,
	name: string,
): Operating | undefined {
	return settle(circuit, circuit.standingOf(settings, name));
}

/** The operating point of a settled one with some branches changed; undefined where it does not settle. */
export function changed(point: Operating, branches: readonly BranchChange[]): Operating | undefined {
	return settle(point.circuit, point.standing, { branches, added: [] });
}

function settle(circuit: Circuit, standing: Standing, change?: Change): Operating | undefined {
	try {
		return operate(circuit, standing, change === undefined ? {} : { change });
	} catch (error) {
		if (error instanceof CircuitError) return undefined;
		throw error;
	}
}

/** All plugged in, battery and generator off: for ohms. */
export function deadPoint(circuit: Circuit): Operating {
	let point = deadPoints.get(circuit);
	if (point === undefined) {
		const off = [...circuit.loom.parts.values()]
			.filter((part) => part.kind === "battery" || part.kind === "generator")
			.map((part): [string, string] => [part.id, "off"]);
		point = operate(circuit, circuit.standingOf(new Map(off), "battery off"), { dead: true });
		deadPoints.set(circuit, point);
	}
	return point;
}
