/** What to read in a stage: where current is taken, and what functions need. */
import { contactsOfPart, type Loom } from "../../loom/index.js";
import { takingPins } from "../../rules/support/feeds.js";
import type { CarState } from "./state.js";
import type { StageReading } from "./types.js";

/** Most readings at loads in one stage; supplies of control units come on top. */
const MOST_LOADS = 4;

/** Battery's minus clamp: where the black lead stays. */
export function batteryPost(loom: Loom, role: "+" | "-"): string | undefined {
	const battery = [...loom.parts.values()].find((part) => part.kind === "battery");
	return battery && contactsOfPart(loom, battery.id).find((contact) => contact.role === role)?.id;
}

/**
 * Volts at pins that become live and take current: every supply of a unit, and of loads those with the least volts.
 * Of a load with several pins only the one with the most volts is read: the others lie behind its own coil.
 */
export function readsOfLoads(state: CarState, live: readonly string[]): StageReading[] {
	const minus = batteryPost(state.circuit.loom, "-");
	if (minus === undefined) return [];
	const { parts } = state.circuit.loom;
	const fresh = new Set(live);
	const units: StageReading[] = [];
	const loads = new Map<string, StageReading>();
	for (const pin of takingPins(state.circuit)) {
		const reading = fresh.has(pin.id) && state.isFed(pin.id) ? state.read("volts", pin.id, minus) : undefined;
		if (reading?.value === undefined) continue;
		if (parts.get(pin.part)?.kind === "control unit") units.push(reading);
		else if (reading.value > (loads.get(pin.part)?.value ?? 0)) loads.set(pin.part, reading);
	}
	const farthest = [...loads.values()].sort((x, y) => x.value! - y.value!);
	return [...units, ...farthest.slice(0, MOST_LOADS)];
}

/** What the functions of the car need in a listed condition. */
export function readsOfFunctions(state: CarState, condition: string): StageReading[] {
	const { loom } = state.circuit;
	const seen = new Set<string>();
	return loom.functions
		.filter((need) => need.when === condition)
		.flatMap((need) => {
			const to = need.reference || batteryPost(loom, "-");
			const key = `${need.measures} ${need.contact} ${to}`;
			if (to === undefined || seen.has(key)) return [];
			seen.add(key);
			return state.read(need.measures, plain(need.contact), plain(to)) ?? [];
		});
}

/** The loom's side of a contact: what a meter reaches. */
const plain = (contact: string): string => contact.replace(/!pin$/, "");
