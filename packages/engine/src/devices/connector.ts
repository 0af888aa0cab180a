/** Connector housing: holds contacts. Its mated pairs are joined by the assembly, not here. */
import type { DeviceKind } from "./types.js";

export const connector: DeviceKind = {
	kind: "connector",
	title: "Connector",
	roles: ["a", "b"],
	needs: [],
	repeats: true,
	values: {},
	states: () => ["mated", "unmated"],
	build() {},
};
