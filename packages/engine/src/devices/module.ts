/** A device known only by its feed: it draws its current and is otherwise left alone. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

export const module: DeviceKind = {
	kind: "module",
	title: "Module (feed only)",
	roles: "any",
	needs: ["supply", "ground"],
	repeats: true,
	values: { amps: value(0.1, "A", 1e-6, 200, PRACTICE) },
	states: () => ["fitted"],
	build(view, net) {
		net.branch({
			a: view.pinOf("supply")!,
			b: view.pinOf("ground")!,
			siemens: view.value("amps") / 12,
			spread: 0.3,
			owner: own(view.part, "load"),
		});
	},
};
