/**
 * When a control unit is awake and powered.
 *
 * Asleep; awake (wake line up: its low-side outputs work, so it can pull in its own main relay); powered (awake and its
 * first supply up: everything works).
 */
import type { DeviceView, NetworkBuilder, NodeName } from "../types.js";

export const ASLEEP = 0;
const AWAKE = 1;
const POWERED = 2;
export const POWER_STATES = ["asleep", "awake", "powered"] as const;

/** What shows a unit's power, and how to read it. It has no memory, so all automata of a unit agree on it. */
export interface Power {
	readonly watch: readonly (readonly [NodeName, NodeName])[];
	/**
	 * Number of the {@link POWER_STATES} from the watched volts.
	 * @param from place of the first of them; asked millions of times, so nothing is cut out of the list
	 */
	readonly of: (volts: readonly number[], from: number) => number;
	/** Volts by which each may move before `of` can answer otherwise. */
	readonly slack: (volts: readonly number[]) => readonly number[];
}

/** @param supply, ground of the unit inside */
export function powerOf(view: DeviceView, net: NetworkBuilder, supply: NodeName, ground: NodeName): Power {
	const wakes = view.withRole("wake");
	const wakeVolts = wakes.map((contact) => view.pinValue(contact, "volts"));
	const enough = view.value("min_volts");
	return {
		watch: [[supply, ground], ...wakes.map((c): [string, string] => [net.pin(c.id), ground])],
		of(volts, from) {
			let called = wakeVolts.length === 0;
			for (let k = 0; k < wakeVolts.length && !called; k++) called = volts[from + 1 + k]! >= wakeVolts[k]!;
			if (!called) return ASLEEP;
			if (volts[from]! >= enough) return POWERED;
			return wakeVolts.length > 0 ? AWAKE : ASLEEP;
		},
		slack: ([fed = 0, ...wake]) => [
			Math.abs(fed - enough),
			...wake.map((volts, k) => Math.abs(volts - wakeVolts[k]!)),
		],
	};
}
