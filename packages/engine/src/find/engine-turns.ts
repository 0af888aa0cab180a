/**
 * Whether the engine turns while a reading is taken: what that costs in minutes and what must be minded. Minutes and
 * cautions are common practice, no source; the procedures of the car's maker come first.
 */
import { type Circuit, settingsOf } from "../circuit/index.js";
import { CAUTIONS } from "../rules/support/cautions.js";
import { positionOf, positionsMeaning, withDuty } from "../rules/support/positions.js";

type Turning = "standing" | "cranked" | "running";

/** Minutes more than with the engine standing: a second person at the key and rests for the starter; a start, and air. */
const MINUTES: Readonly<Record<Turning, number>> = { standing: 0, cranked: 4, running: 2 };

const MIND: Readonly<Record<Turning, readonly string[]>> = {
	standing: [],
	cranked: [
		CAUTIONS.start,
		"A second person holds the key; hands, hair and leads clear of belts and fan. Let the starter rest between tries.",
	],
	running: [
		"The engine runs: parking brake on, exhaust led out; hands, hair and leads clear of belts and fan.",
	],
};

const known = new WeakMap<Circuit, Map<string, Turning>>();

/** @throws RangeError where there is no such condition */
function turningIn(circuit: Circuit, when: string): Turning {
	let conditions = known.get(circuit);
	if (conditions === undefined) {
		conditions = new Map();
		known.set(circuit, conditions);
	}
	let turning = conditions.get(when);
	if (turning === undefined) {
		turning = turningUnder(circuit, settingsOf(circuit.loom, when));
		conditions.set(when, turning);
	}
	return turning;
}

function turningUnder(circuit: Circuit, settings: ReadonlyMap<string, string>): Turning {
	const parts = [...circuit.loom.parts.values()];
	if (parts.some(({ id, kind }) => kind === "generator" && settings.get(id) === "on")) return "running";
	const atStart = withDuty(circuit, "start key").some((key) =>
		positionsMeaning(key, "start").includes(positionOf(settings, key)),
	);
	return atStart ? "cranked" : "standing";
}

/** Minutes that a reading takes longer because the engine turns. */
export const turningMinutes = (circuit: Circuit, when: string): number => MINUTES[turningIn(circuit, when)];

/** What must be minded because it does. */
export const turningCautions = (circuit: Circuit, when: string): readonly string[] =>
	MIND[turningIn(circuit, when)];
