/** Filament lamp: cold it has a fraction of its working resistance, so it closes circuits a meter would call open. */
import type { Part } from "../loom/index.js";
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/** Below this share of its rated voltage the filament counts as cold. */
const WARM_SHARE = 0.2;

export const lamp: DeviceKind = {
	kind: "lamp",
	title: "Filament lamp",
	roles: ["a", "b"],
	needs: ["a", "b"],
	repeats: false,
	values: {
		watts: value(undefined, "W", 0.05, 1000, "printed on the lamp"),
		at_volts: value(13.5, "V", 1, 60, "test voltage of 12 V lamps, from memory, ECE R37"),
		cold_share: value(0.1, "share", 0.01, 1, PRACTICE),
	},
	states: () => ["fitted"],
	build(view, net) {
		const a = view.pinOf("a")!;
		const b = view.pinOf("b")!;
		const rated = view.value("at_volts");
		const hot = view.value("watts") / rated ** 2;
		const cold = hot / view.value("cold_share");
		// Once hot it stays hot until the voltage is a good deal lower: no chatter at the edge.
		const edge = (state: number) => rated * WARM_SHARE * (state === 1 ? 0.5 : 1);
		const filament = net.branch({ a, b, siemens: cold, spread: 0.15, owner: own(view.part, "filament") });
		net.automaton({
			part: view.part.id,
			element: "filament",
			states: ["cold", "hot"],
			branches: [filament],
			table: [[{ siemens: cold, emf: 0 }], [{ siemens: hot, emf: 0 }]],
			watch: [[a, b]],
			next: (state, [volts = 0]) => (Math.abs(volts) > edge(state) ? 1 : 0),
			slack: (state, [volts = 0]) => [Math.abs(Math.abs(volts) - edge(state))],
		});
	},
};

/**
 * Amperes of a lamp in its first moment on `volts`, its filament cold: for the sizing of contacts, drivers and fuses.
 * Wires and source lower it. The first rush of a motor is out of scope: its ohms are those at its working load.
 *
 * @throws RangeError when the part is no lamp or has no watts
 */
export function inrushAmps(part: Part, volts: number): number {
	const need = (name: string) => part.values[name] ?? lamp.values[name]?.default ?? Number.NaN;
	const coldOhms = (need("at_volts") ** 2 / need("watts")) * need("cold_share");
	if (part.kind !== lamp.kind || !(coldOhms > 0))
		throw new RangeError(`${part.id} is a ${part.kind}; wanted: a lamp with its watts`);
	return Math.abs(volts) / coldOhms;
}
