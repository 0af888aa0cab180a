/** Battery: a voltage source behind its internal resistance, or nothing when disconnected. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

export const battery: DeviceKind = {
	kind: "battery",
	title: "Battery",
	roles: ["+", "-"],
	needs: ["+", "-"],
	repeats: false,
	values: {
		volts: value(12.6, "V", 0, 60, "resting battery, full: reference/electrical/practice-limits.csv row 029"),
		ohms: value(0.006, "ohm", 1e-6, 1e6, PRACTICE),
	},
	states: () => ["on", "off"],
	build(view, net) {
		net.branch({
			a: view.pinOf("+")!,
			b: view.pinOf("-")!,
			siemens: view.state === "on" ? 1 / view.value("ohms") : 0,
			emf: view.value("volts"),
			spread: 0.2,
			emfSpread: 0.1,
			owner: own(view.part, "cells"),
		});
	},
};
