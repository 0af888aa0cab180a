/** All that can be chosen in one situation, solved for each way of doing the whole. */
import { NOTHING } from "./costs.js";
import { finish } from "./finish.js";
import { choicesOf, type Hopeless } from "./options.js";
import { Pricer, priceNewLoom, priceRecipe } from "./price.js";
import { held, type Layout, layOut, MODES, type Mode, type Solved, type Solver } from "./program.js";
import type { Situation } from "./situation.js";
import type { Option, PlanTables, Price } from "./types.js";

/** Of the program, and of what was left out of it. */
export interface Size {
	readonly options: number;
	readonly dominated: number;
	readonly columns: number;
	readonly rows: number;
}

export interface Outlook {
	readonly at: Situation;
	readonly hopeless: readonly Hopeless[];
	readonly layout: Layout;
	readonly modes: ReadonlyMap<Mode, Solved>;
	readonly mode: Mode;
	/** What is the same whatever is chosen. */
	readonly fixed: Price;
	/** The whole. */
	readonly minutes: number;
	readonly size: Size;
}

export function outlookOf(at: Situation, plan: PlanTables, solver: Solver): Outlook {
	const { hopeless, ...choices } = choicesOf(at, plan.circuits);
	const layout = layOut(
		choices,
		plan.circuits.map(({ target }) => target),
		{
			pairs: pairsOf(plan),
			total: (price) => at.costs.total(price),
			overlaid: (option) => overlaid(at, option),
			modes: modePrices(at),
		},
	);
	const modes = new Map(
		MODES.map((name) => [name, hopeless.length > 0 ? NONE : solver(inMode(layout, name))]),
	);
	const mode = cheapest(modes, MODES);
	const { recipe, newParts } = finish(at, [], []);
	const fixed = priceRecipe(new Pricer(at.costs, at.places, at.delivered, newParts), recipe);
	const size = {
		options: choices.options.length,
		dominated: choices.dominated,
		columns: layout.program.costs.length,
		rows: layout.program.rows.length,
	};
	return {
		at,
		hopeless,
		layout,
		modes,
		mode,
		fixed,
		minutes: modes.get(mode)!.objective + at.costs.total(fixed),
		size,
	};
}

/** A new loom has no steps: what is shown is the best of the ways that have. */
export const shownOf = ({ modes }: Outlook): Solved => modes.get(cheapest(modes, [MODES[0], MODES[1]]))!;

export const cheapest = (modes: ReadonlyMap<Mode, Solved>, names: readonly Mode[]): Mode =>
	names.reduce((best, name) => (modes.get(name)!.objective < modes.get(best)!.objective ? name : best));

function pairsOf({ circuits }: PlanTables): [string, string][] {
	const pairs = new Map<string, string[]>();
	for (const { pair, target } of circuits)
		if (pair !== "") pairs.set(pair, [...(pairs.get(pair) ?? []), target]);
	return [...pairs.values()].flatMap(([one, other]) =>
		one !== undefined && other !== undefined ? [[one, other]] : [],
	);
}

/** In a second loom the laying of each wire takes its share of the time. */
function overlaid(at: Situation, option: Option): Price {
	const share = at.costs.row("overlay share").value;
	const laid = option.steps.reduce((sum, { metres }) => sum + (metres ?? 0), 0);
	return { ...option.own, minutes: option.own.minutes - (1 - share) * laid * at.costs.row("wire").minutes };
}

const modePrices = (at: Situation): Record<Mode, Price> => ({
	"work on the loom": NOTHING,
	"overlay loom": at.costs.work("overlay loom"),
	"new loom": priceNewLoom(at.costs, at.base),
});

export const chosenOf = (layout: Layout, { values }: Solved): Option[] =>
	layout.options.filter((_, k) => {
		const over = layout.overlayColumn(k);
		return values[layout.optionColumn(k)]! > 0.5 || (over !== undefined && values[over]! > 0.5);
	});

export const totalOf = ({ at, fixed }: Outlook, { objective }: Solved): number =>
	objective + at.costs.total(fixed);

/** The program with the way of doing the whole settled. */
export function inMode(
	{ program, modeColumn }: Layout,
	mode: Mode,
	off: readonly number[] = [],
): typeof program {
	const others = MODES.filter((name) => name !== mode).map(modeColumn);
	return held(program, [...others, ...off], [modeColumn(mode)]);
}

const NONE: Solved = { values: [], objective: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY };
