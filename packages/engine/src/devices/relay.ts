/** Relay: a coil with hysteresis that moves a change-over contact. Terminals after DIN 72552. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/** Share of the coil across which its current is seen. */
const SENSED = 0.01;

export const relay: DeviceKind = {
	kind: "relay",
	title: "Relay",
	roles: ["85", "86", "30", "87", "87a"],
	needs: ["85", "86", "30", "87"],
	repeats: false,
	values: {
		coil_ohms: value(85, "ohm", 1, 1e5, PRACTICE),
		pull_in_volts: value(7.2, "V", 0.1, 60, PRACTICE),
		drop_out_volts: value(1.2, "V", 0.01, 60, PRACTICE),
		contact_ohms: value(0.003, "ohm", 1e-5, 10, PRACTICE),
	},
	states: () => ["in", "pulled"],
	build(view, net) {
		const { part } = view;
		const coilA = view.pinOf("86")!;
		const coilB = view.pinOf("85")!;
		const common = view.pinOf("30")!;
		// The relay pulls in by the coil's current: looked at across its last hundredth, so an open coil has none.
		const inside = net.inside(part.id, "coil");
		const ohms = view.value("coil_ohms");
		const owner = own(part, "coil");
		net.branch({ a: coilA, b: inside, siemens: 1 / (ohms * (1 - SENSED)), spread: 0.05, owner });
		net.branch({ a: inside, b: coilB, siemens: 1 / (ohms * SENSED), spread: 0.05, owner });
		const closed = { siemens: 1 / view.value("contact_ohms"), emf: 0 };
		const open = { siemens: 0, emf: 0 };
		const makes = net.branch({
			a: common,
			b: view.pinOf("87")!,
			siemens: 0,
			spread: 0.5,
			owner: own(part, "make contact"),
		});
		const rest = view.pinOf("87a");
		const branches = [makes];
		if (rest !== undefined) {
			const owner = own(part, "break contact");
			branches.push(net.branch({ a: common, b: rest, siemens: closed.siemens, spread: 0.5, owner }));
		}
		const pullIn = view.value("pull_in_volts");
		const dropOut = view.value("drop_out_volts");
		const edge = (state: number) => (state === 1 ? dropOut : pullIn);
		const take = (row: { siemens: number; emf: number }[]) => row.slice(0, branches.length);
		net.automaton({
			part: part.id,
			element: "coil",
			states: ["released", "pulled in"],
			branches,
			table: [take([open, closed]), take([closed, open])],
			watch: [[inside, coilB]],
			next: (state, [volts = 0]) => (Math.abs(volts) / SENSED >= edge(state) ? 1 : 0),
			slack: (state, [volts = 0]) => [Math.abs(Math.abs(volts) - SENSED * edge(state))],
		});
	},
};
