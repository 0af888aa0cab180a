/**
 * Cautions of the circuits that a path runs through. Common practice, no source: they never replace the
 * procedures of the car's maker.
 */
import type { Loom } from "../../loom/index.js";

export const CAUTIONS = {
	restraint:
		"Restraint circuit (pyrotechnic): never measure or feed it. Battery off, wait the time the car's maker gives, follow the maker's procedure.",
	voltage: "High-voltage circuit: out of scope here. Only trained persons, by the maker's procedure.",
	battery:
		"Disconnect the battery, minus first, before you cut or join here, and keep it off while you work.",
	fuel: "Fuel: no sparks, no flame, air the place. Release fuel pressure by the maker's procedure.",
	brakes: "Brake circuit: do not move the car before the brake lamps and pedal switch are proved.",
	start: "The engine may turn and the car may jump: chock the wheels, neutral, nobody in front.",
} as const;

const START = new Set(["clutch switch", "neutral switch", "start key", "starter", "selector"]);
/** From this size a wire can carry welding current from the battery: common practice, no source. */
const HEAVY_MM2 = 6;

/** @param path ids of contacts, wires, joints and parts */
export function cautionsOf(loom: Loom, path: readonly string[]): string[] {
	const found = new Set<keyof typeof CAUTIONS>();
	for (const id of path) {
		const wire = loom.wires.get(id);
		const contact = loom.contacts.get(id);
		const part = loom.parts.get(contact?.part ?? id);
		const housing = loom.parts.get(contact?.connector ?? "");
		const marks = [wire, part, housing, loom.joints.get(id)].flatMap((thing) => thing?.marks ?? []);
		if (marks.includes("pyrotechnic")) found.add("restraint");
		if (marks.includes("high voltage")) found.add("voltage");
		if (part?.kind === "battery" || part?.kind === "generator" || (wire?.mm2 ?? 0) >= HEAVY_MM2)
			found.add("battery");
		if (part?.kind === "injector" || /\bfuel\b/i.test(`${wire?.circuit} ${part?.label}`)) found.add("fuel");
		if (part?.duty.startsWith("brake") || /\bbrakes?\b/i.test(wire?.circuit ?? "")) found.add("brakes");
		if (START.has(part?.duty ?? "") || part?.kind === "starter") found.add("start");
	}
	return (Object.keys(CAUTIONS) as (keyof typeof CAUTIONS)[])
		.filter((key) => found.has(key))
		.map((key) => CAUTIONS[key]);
}
