/** Coil with its driver inside: draws its primary current while the signal asks for it. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

export const ignitionCoil: DeviceKind = {
	kind: "ignition coil",
	title: "Ignition coil",
	roles: ["supply", "ground", "signal"],
	needs: ["supply", "ground", "signal"],
	repeats: false,
	values: {
		ohms: value(0.6, "ohm", 0.05, 100, "0.3 to 1.0 ohm, from memory"),
		input_ohms: value(2200, "ohm", 10, 1e7, PRACTICE),
	},
	states: () => ["off", "on"],
	build(view, net) {
		const ground = view.pinOf("ground")!;
		// At rest only the driver's own supply current flows, a few milliamps.
		net.branch({
			a: view.pinOf("supply")!,
			b: ground,
			siemens: 1 / (view.state === "on" ? view.value("ohms") : 4000),
			spread: 0.1,
			owner: own(view.part, "primary"),
		});
		net.branch({
			a: view.pinOf("signal")!,
			b: ground,
			siemens: 1 / view.value("input_ohms"),
			spread: 0.1,
			owner: own(view.part, "input"),
		});
	},
};
