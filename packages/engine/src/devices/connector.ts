/** Connector housing: holds contacts. Its mated pairs are joined by the assembly, not here. */
import { type DeviceKind, PRACTICE, value } from "./types.js";

export const connector: DeviceKind = {
	kind: "connector",
	title: "Connector",
	roles: ["a", "b"],
	needs: [],
	repeats: true,
	values: {
		// Range of wire that its terminals take; 0: not known.
		least_mm2: value(0, "mm2", 0, 240, PRACTICE),
		most_mm2: value(0, "mm2", 0, 240, PRACTICE),
	},
	states: () => ["mated", "unmated"],
	build() {},
};
