/** Starter: the solenoid pulls in and closes the motor's own contact. Terminals 30, 50, 31 after DIN 72552. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/** Share of the solenoid across which its current is seen. */
const SENSED = 0.01;

export const starter: DeviceKind = {
	kind: "starter",
	title: "Starter",
	roles: ["30", "50", "31"],
	needs: ["30", "50", "31"],
	repeats: false,
	values: {
		solenoid_ohms: value(0.6, "ohm", 0.05, 100, PRACTICE),
		motor_ohms: value(0.05, "ohm", 0.001, 10, PRACTICE),
		pull_in_volts: value(7, "V", 0.5, 60, PRACTICE),
	},
	states: () => ["fitted"],
	build(view, net) {
		const control = view.pinOf("50")!;
		const ground = view.pinOf("31")!;
		// Pulled in by the solenoid's current, seen across its last hundredth: an open solenoid has none.
		const inside = net.inside(view.part.id, "solenoid");
		const ohms = view.value("solenoid_ohms");
		const owner = own(view.part, "solenoid");
		net.branch({ a: control, b: inside, siemens: 1 / (ohms * (1 - SENSED)), spread: 0.1, owner });
		net.branch({ a: inside, b: ground, siemens: 1 / (ohms * SENSED), spread: 0.1, owner });
		const turning = { siemens: 1 / view.value("motor_ohms"), emf: 0 };
		const motor = net.branch({
			a: view.pinOf("30")!,
			b: ground,
			siemens: 0,
			spread: 0.2,
			owner: own(view.part, "motor"),
		});
		const pullIn = view.value("pull_in_volts");
		// Held in it needs about a third of the pull-in voltage: common practice, no source.
		const edge = (state: number) => (state === 1 ? pullIn / 3 : pullIn);
		net.automaton({
			part: view.part.id,
			element: "solenoid",
			states: ["at rest", "cranking"],
			branches: [motor],
			table: [[{ siemens: 0, emf: 0 }], [turning]],
			watch: [[inside, ground]],
			next: (state, [volts = 0]) => (volts / SENSED >= edge(state) ? 1 : 0),
			slack: (state, [volts = 0]) => [Math.abs(volts - SENSED * edge(state))],
		});
	},
};
