/** Diode and LED: conducts behind its forward voltage one way, leaks the other way. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/** Reverse leakage, 1 nS: keeps the far side defined and lies beyond any workshop meter. */
const LEAK_SIEMENS = 1e-9;

/** A conducting junction is released only by a reverse current that is more than rounding. */
const RELEASE_AMPS = 1e-6;

function junction(kind: string, title: string, volts: number, ohms: number): DeviceKind {
	return {
		kind,
		title,
		roles: ["a", "b"],
		needs: ["a", "b"],
		repeats: false,
		values: {
			volts: value(volts, "V", 0.1, 10, PRACTICE),
			ohms: value(ohms, "ohm", 1e-4, 1e6, PRACTICE),
		},
		states: () => ["fitted"],
		build(view, net) {
			const a = view.pinOf("a")!;
			const b = view.pinOf("b")!;
			const forward = view.value("volts");
			const series = view.value("ohms");
			const owner = own(view.part, "junction");
			const branch = net.branch({ a, b, siemens: LEAK_SIEMENS, spread: 0.1, owner });
			net.automaton({
				part: view.part.id,
				element: "junction",
				states: ["blocking", "conducting"],
				branches: [branch],
				table: [[{ siemens: LEAK_SIEMENS, emf: 0 }], [{ siemens: 1 / series, emf: forward }]],
				watch: [[a, b]],
				next: (state, [across = 0]) =>
					state === 1 ? ((across - forward) / series < -RELEASE_AMPS ? 0 : 1) : across > forward ? 1 : 0,
				slack: (state, [across = 0]) => [
					Math.abs(across - forward + (state === 1 ? RELEASE_AMPS * series : 0)),
				],
			});
		},
	};
}

export const diode = junction("diode", "Diode", 0.7, 0.05);
export const led = junction("led", "LED", 2.0, 470);
