/** Of which sort a step is: by what of the car it works on, not by what its writer says. */
import type { Car, Loom } from "@loomwright/engine";
import { CRITICAL, type Sort } from "./sorts.js";

/** Words in a circuit's name or a part's duty or label; numbers are DIN 72552: 50 starter control, 54 brake lamps. */
const BY_WORD: readonly (readonly [RegExp, Sort])[] = [
	[/\bbags?\b|airbag|belt tensioner|crash|restraint/i, "restraints"],
	[/brake|\b54\b|wheel speed/i, "brakes"],
	[/\bstart|cranking|\b50b?\b|clutch|neutral switch|park\/neutral|selector/i, "start interlock"],
	[/fuel|injector/i, "fuel"],
];

/**
 * @param step `recipe/01`, `prove/...`, `power/...`, or a name of the shop's own
 * @param claimed what the writer calls it: it counts for a step of the shop's own, or to make any step critical
 */
export function stepSort(car: Car, step: string, claimed?: Sort): Sort {
	const known = knownSort(car, step);
	if (claimed !== undefined && CRITICAL.has(claimed) && !(known !== undefined && CRITICAL.has(known)))
		return claimed;
	return known ?? claimed ?? "other";
}

function knownSort(car: Car, step: string): Sort | undefined {
	const [room, ...rest] = step.split("/");
	if (room === "power") return "first power";
	if (room === "prove") return "measuring";
	if (room === "recipe") return recipeSort(car, rest.join("/"));
	return wordSort(step);
}

function recipeSort(car: Car, step: string): Sort | undefined {
	const row = car.tables.recipe.find((one) => one.step === step);
	if (!row) return undefined;
	const words = [row.title, row.circuit, ...touchedWords(car, step)];
	if (words.includes("pyrotechnic")) return "restraints";
	const found = new Set(words.map(wordSort));
	for (const [, sort] of BY_WORD) if (found.has(sort)) return sort;
	return row.kind === "fit part" || row.kind === "remove part" ? "parts" : "wiring";
}

/** Circuits, duties and marks of the wires and parts that a step works on, before and after. */
function touchedWords(car: Car, step: string): string[] {
	const on = (touched: ReadonlyMap<string, readonly string[]>) =>
		[...touched].filter(([, steps]) => steps.includes(step)).map(([id]) => id);
	const looms: readonly Loom[] = [car.delivered, car.converted];
	const words = (id: string) =>
		looms.flatMap(({ wires, parts }) => {
			const wire = wires.get(id);
			const part = parts.get(id);
			return [
				...(wire ? [wire.circuit, ...wire.marks] : []),
				...(part ? [part.duty, part.label, ...part.marks] : []),
			];
		});
	return [...on(car.touched.wires), ...on(car.touched.parts)].flatMap(words);
}

const wordSort = (text: string): Sort | undefined => BY_WORD.find(([words]) => words.test(text))?.[1];
