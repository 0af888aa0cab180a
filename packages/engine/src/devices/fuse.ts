/** Blade fuse: a small resistance that falls with its rating. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/**
 * Cold resistance in ohms of a blade fuse of `amps`.
 * About 0.1 V falls at rated current when hot; cold it is roughly half that: common practice, no source.
 */
export function fuseOhms(amps: number): number {
	return 0.056 / amps;
}

export const fuse: DeviceKind = {
	kind: "fuse",
	title: "Fuse",
	roles: ["in", "out"],
	needs: ["in", "out"],
	repeats: false,
	values: {
		amps: value(undefined, "A", 0.05, 1000, "printed on the fuse"),
		ohms: value(0, "ohm", 0, 10, PRACTICE),
	},
	states: () => ["in", "pulled"],
	build(view, net) {
		net.branch({
			a: view.pinOf("in")!,
			b: view.pinOf("out")!,
			siemens: 1 / (view.value("ohms") || fuseOhms(view.value("amps"))),
			spread: 0.2,
			owner: own(view.part, "element"),
		});
	},
};
