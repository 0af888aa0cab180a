/** Switch: each position joins pairs of its terminals. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

export const switchKind: DeviceKind = {
	kind: "switch",
	title: "Switch",
	roles: "any",
	needs: [],
	repeats: false,
	values: { ohms: value(0.02, "ohm", 1e-5, 1e4, PRACTICE) },
	states: (part) => part.positions.map((p) => p.name),
	build(view, net) {
		const position = view.part.positions.find((p) => p.name === view.state);
		const closed = new Set((position?.joins ?? []).map(([a, b]) => `${a}-${b}`));
		const pairs = new Map<string, readonly [string, string]>();
		for (const p of view.part.positions) for (const j of p.joins) pairs.set(`${j[0]}-${j[1]}`, j);
		for (const [name, [a, b]] of pairs)
			net.branch({
				a: view.pinOf(a)!,
				b: view.pinOf(b)!,
				siemens: closed.has(name) ? 1 / view.value("ohms") : 0,
				spread: 0.5,
				owner: own(view.part, name),
			});
	},
};
