/** Pins of a part that may be changed over: by its kind nobody can tell them apart. */
import type { Loom } from "../../packages/engine/src/loom/index.js";

/** Two-pin parts without polarity. A motor is not among them: it turns the other way. */
const PLAIN = [
	"lamp",
	"heater",
	"coil",
	"injector",
	"resistor",
	"thermistor",
	"coil sensor",
	"bus end",
	"fuse",
];

/** Contact to the one it may be changed over with. */
export function alikePins(loom: Loom): ReadonlyMap<string, string> {
	const found = new Map<string, string>();
	const put = (a: string | undefined, b: string | undefined) => {
		if (a === undefined || b === undefined) return;
		found.set(a, b);
		found.set(b, a);
	};
	for (const part of loom.parts.values()) {
		const pins = [...loom.contacts.values()].filter((contact) => contact.part === part.id);
		if (PLAIN.includes(part.kind)) put(pins[0]?.id, pins[1]?.id);
		if (part.kind !== "switch") continue;
		const joins = part.positions.flatMap((position) => position.joins);
		const partners = (role: string) =>
			new Set(joins.flatMap(([a, b]) => (a === role ? [b] : b === role ? [a] : [])));
		for (const [a, b] of joins)
			if (partners(a).size === 1 && partners(b).size === 1)
				put(pins.find((pin) => pin.role === a)?.id, pins.find((pin) => pin.role === b)?.id);
	}
	return found;
}
