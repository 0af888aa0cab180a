/** Puts mistakes into a car's recipe one at a time, asks the rules, and asks whether each matters. */
import type { Car } from "../../packages/engine/src/car.js";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import type { Loom } from "../../packages/engine/src/loom/index.js";
import { applyRecipe, loomAs } from "../../packages/engine/src/recipe/index.js";
import { type Finding, runRules } from "../../packages/engine/src/rules/index.js";
import { Intended } from "./matters.js";
import { drawMistake, type Mistake } from "./mistakes.js";

/** Draws for each mistake wanted, before it is taken that there are no more. */
const MOST_DRAWS = 1000;

export interface Tried {
	readonly kind: string;
	readonly text: string;
	/** Why it matters electrically; undefined: it does not. */
	readonly why: string | undefined;
	/** Rules that say something which they do not say of the intended car. */
	readonly rules: readonly string[];
	/** Those of them that do not only note it. */
	readonly loud: readonly string[];
}

/**
 * @param random uniform on [0, 1)
 * @param count of mistakes, no two alike, that the recipe takes (fewer where there are no more); those that it refuses are drawn anew and counted
 */
export function tryMistakes(
	car: Car,
	random: () => number,
	count: number,
): { readonly tried: readonly Tried[]; readonly refused: number } {
	const delivered = new Circuit(car.delivered);
	const sound = new Circuit(car.converted);
	const intended = new Intended(sound);
	const known = new Set(runRules(sound, delivered).map(keyOf));
	const draw = { tables: car.tables, converted: car.converted, random };
	const tried: Tried[] = [];
	const drawn = new Set<string>();
	let refused = 0;
	for (let draws = 0; tried.length < count && draws < MOST_DRAWS * count; draws++) {
		const mistake = drawMistake(draw);
		if (mistake === undefined || drawn.has(mistake.text)) continue;
		drawn.add(mistake.text);
		const loom = loomWith(car, mistake);
		if (loom === undefined) {
			refused++;
			continue;
		}
		const circuit = new Circuit(loom);
		const said = runRules(circuit, delivered).filter((finding) => !known.has(keyOf(finding)));
		const { kind, text } = mistake;
		const names = (findings: readonly Finding[]) => [...new Set(findings.map(({ rule }) => rule))];
		const loud = names(said.filter(({ severity }) => severity !== "note"));
		tried.push({ kind, text, why: intended.matters(circuit), rules: names(said), loud });
	}
	return { tried, refused };
}

/** The converted loom with the mistake in it; undefined where a step does not fit. */
function loomWith(car: Car, { recipe, parts }: Mistake): Loom | undefined {
	const { loom, misfits } = applyRecipe(car.tables.delivered, recipe, car.tables.newParts);
	if (misfits.length > 0) return undefined;
	const now = new Map(loom.parts);
	for (const [id, part] of parts) if (now.has(id)) now.set(id, part);
	return loomAs({ ...loom, parts: now }, "converted");
}

const keyOf = ({ rule, where }: Finding) => `${rule}|${where}`;
