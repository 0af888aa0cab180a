/** Terminating resistor at an end of the data bus: 120 ohm between its lines (ISO 11898-2). */
import { type DeviceKind, own, value } from "./types.js";

export const busEnd: DeviceKind = {
	kind: "bus end",
	title: "Bus terminator",
	roles: ["high", "low"],
	needs: ["high", "low"],
	repeats: false,
	values: {
		ohms: value(120, "ohm", 1, 1e6, "ISO 11898-2; reference/electrical/can-physical-layer.csv row 001"),
	},
	states: () => ["fitted"],
	build(view, net) {
		net.branch({
			a: view.pinOf("high")!,
			b: view.pinOf("low")!,
			siemens: 1 / view.value("ohms"),
			spread: 0.01,
			owner: own(view.part, "resistor"),
		});
	},
};
