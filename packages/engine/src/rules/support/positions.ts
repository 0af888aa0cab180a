/** Switch positions by what they mean, and the conditions that set them. */
import type { Circuit } from "../../circuit/index.js";
import type { Part } from "../../loom/index.js";
import { type Settled, wholeConditions } from "./points.js";

/** Names a position may have for what it means. Capitals and spaces do not matter. */
export const MEANINGS = {
	pressed: ["pressed", "down"],
	neutral: ["neutral", "n"],
	"park or neutral": ["p", "n", "park", "neutral", "p/n"],
	reverse: ["reverse", "r"],
	start: ["start", "crank"],
	run: ["run", "on"],
} as const;

export type Meaning = keyof typeof MEANINGS;

const means = (name: string, meaning: Meaning) =>
	(MEANINGS[meaning] as readonly string[]).includes(name.trim().toLowerCase());

/** Names of the part's positions that mean this, in table order. */
export function positionsMeaning(part: Part, meaning: Meaning): string[] {
	return part.positions.map((position) => position.name).filter((name) => means(name, meaning));
}

/** Parts with a duty, in table order. */
export function withDuty(circuit: Circuit, duty: string): Part[] {
	return [...circuit.loom.parts.values()].filter((part) => part.duty === duty);
}

/** The position a switch is in under these settings. */
export function positionOf(settings: ReadonlyMap<string, string>, part: Part): string {
	return settings.get(part.id) ?? part.positions[0]?.name ?? "";
}

/** Listed conditions, the car whole, in which every such switch is in a position of this meaning. */
export function conditionsWith(circuit: Circuit, switches: readonly Part[], meaning: Meaning): Settled[] {
	return wholeConditions(circuit).filter(({ settings }) =>
		switches.every((part) => means(positionOf(settings, part), meaning)),
	);
}

/** Every combination of the positions of these switches. */
export function combinations(switches: readonly Part[]): ReadonlyMap<string, string>[] {
	return switches.reduce<ReadonlyMap<string, string>[]>(
		(all, part) =>
			all.flatMap((made) => part.positions.map(({ name }) => new Map([...made, [part.id, name]]))),
		[new Map()],
	);
}

/** Settings in words: `S1 pressed, S2 gear`. */
export function settingsText(settings: ReadonlyMap<string, string>): string {
	return [...settings].map(([part, position]) => `${part} ${position}`).join(", ");
}
