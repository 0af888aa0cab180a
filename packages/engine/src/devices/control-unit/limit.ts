/**
 * An output that guards itself: over its limit it falls into its limited state and stays there.
 *
 * A driver shuts down, a sensor supply folds back to a weak source: common practice, no source. Once limited it stays
 * so until the condition ends, as an output latched off until the next start. A cold lamp's first rush must not count:
 * it is limited only when it is still over in the round after, by when a lamp is hot.
 */
import type { AutomatonSpec, BranchState, NodeName } from "../types.js";
import type { PinElement } from "./pins.js";
import { POWER_STATES, type Power } from "./power.js";

const LIMITED = 2;
const PHASES = ["", ", over its limit", ", limited"] as const;
const STATES = PHASES.flatMap((phase) => POWER_STATES.map((power) => power + phase));

/** True in the states of an output that went over its limit. */
export function isLimited(spec: AutomatonSpec, state: number): boolean {
	return spec.states[state]!.endsWith(PHASES[LIMITED]);
}

/** What is known of the branch that guards itself. */
export interface Guarded {
	readonly part: string;
	/** Name of the branch's element. */
	readonly element: string;
	readonly branch: number;
	/** Ends of the branch. */
	readonly across: readonly [NodeName, NodeName];
}

/**
 * The automaton of an output with a limit, which decides its branch in place of the unit's power.
 * One that is off has an automaton that does nothing, so that a unit has the same automata in every condition.
 */
export function limitAutomaton(guarded: Guarded, pin: PinElement, power: Power): AutomatonSpec {
	const { part, element, branch, across } = guarded;
	const { limit } = pin;
	if (limit === undefined || limit === "off")
		return {
			part,
			element,
			states: ["off"],
			branches: [],
			table: [[]],
			watch: [],
			next: () => 0,
			slack: () => [],
		};
	const working = [pin.asleep, pin.awake, pin.powered];
	const rows: readonly BranchState[] = [...working, ...working, pin.asleep, limit.awake, limit.powered];
	const phaseOf = (state: number) => Math.floor(state / POWER_STATES.length);
	return {
		part,
		element,
		states: STATES,
		branches: [branch],
		table: rows.map((row) => [row]),
		watch: [across, ...power.watch],
		next(state, volts) {
			const phase = phaseOf(state);
			const { siemens, emf } = rows[state]!;
			const over = Math.abs(siemens * (volts[0]! - emf)) > limit.amps;
			const after = phase === LIMITED ? LIMITED : over ? phase + 1 : 0;
			return power.of(volts, 1) + after * POWER_STATES.length;
		},
		slack(state, [volts = 0, ...shown]) {
			const { siemens, emf } = rows[state]!;
			const own =
				phaseOf(state) === LIMITED || siemens === 0
					? Number.POSITIVE_INFINITY
					: Math.abs(Math.abs(volts - emf) - limit.amps / siemens);
			return [own, ...power.slack(shown)];
		},
	};
}
