/** Generator: a regulated source while running, an open circuit (blocking diodes) at rest. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

export const generator: DeviceKind = {
	kind: "generator",
	title: "Generator",
	roles: ["B+", "-"],
	needs: ["B+", "-"],
	repeats: false,
	values: {
		volts: value(
			14.2,
			"V",
			0,
			60,
			"engine running 13.7..14.7 V: reference/electrical/practice-limits.csv row 032",
		),
		ohms: value(0.02, "ohm", 1e-6, 1e3, PRACTICE),
	},
	states: () => ["off", "on"],
	build(view, net) {
		net.branch({
			a: view.pinOf("B+")!,
			b: view.pinOf("-")!,
			siemens: view.state === "on" ? 1 / view.value("ohms") : 0,
			emf: view.value("volts"),
			spread: 0.3,
			emfSpread: 0.15,
			owner: own(view.part, "output"),
		});
	},
};
