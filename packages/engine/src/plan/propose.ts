/** The recipe that makes all wanted circuits at least cost, what each second best would cost, and the alternatives. */
import type { Circuit } from "../circuit/index.js";
import type { LoomTables, NewParts, RecipeStep } from "../loom/index.js";
import type { Misfit } from "../recipe/index.js";
import { inPieces } from "./apart.js";
import { NOTHING, plus } from "./costs.js";
import { feedsOf } from "./feeds.js";
import { finish } from "./finish.js";
import { choicesOf, type Hopeless } from "./options.js";
import { partingsOf } from "./partings.js";
import { Pricer, priceNewLoom, priceRecipe, timed } from "./price.js";
import { held, type Layout, layOut, MODES, type Mode, type Solved, type Solver } from "./program.js";
import { type Situation, situation } from "./situation.js";
import type { Option, PlanTables, Price, Way } from "./types.js";
import { type Check, verify } from "./verify.js";

export interface Choice {
	readonly circuit: string;
	readonly title: string;
	readonly way: Way;
	readonly text: string;
	readonly joints: number;
	/** Steps of the recipe that make it, but for those that several circuits share. */
	readonly price: Price;
	/** The cheapest whole with another option for this circuit; undefined where there is none. */
	readonly second: { readonly way: Way; readonly text: string; readonly moreMinutes: number } | undefined;
	/** How many options there were. */
	readonly of: number;
}

export interface Alternative {
	readonly mode: Mode;
	/** All of it in minutes; undefined where it cannot be done. */
	readonly minutes: number | undefined;
	readonly joints: number;
}

export interface Proposal {
	/** Circuits that cannot be made, with why; nothing is proposed then. */
	readonly hopeless: readonly Hopeless[];
	readonly mode: Mode;
	readonly choices: readonly Choice[];
	/** Shared work that the choices need. */
	readonly facilities: readonly string[];
	readonly recipe: readonly RecipeStep[];
	readonly newParts: NewParts;
	/** Steps that do not fit: none, unless parts of the targets do not. */
	readonly misfits: readonly Misfit[];
	readonly checks: readonly Check[];
	/** Of the whole recipe, made on the loom itself. */
	readonly price: Price;
	/** Of that, what is the same whatever is chosen: parts that go and come, and all that they leave loose isolated. */
	readonly fixed: Price;
	/** The whole in minutes, material and risk among them, and what no choice can cost less than. */
	readonly minutes: number;
	readonly bound: number;
	/** (minutes - bound) / minutes. */
	readonly gap: number;
	readonly alternatives: readonly Alternative[];
	readonly size: {
		readonly options: number;
		readonly dominated: number;
		readonly columns: number;
		readonly rows: number;
	};
}

type Car = Pick<LoomTables, "delivered" | "newParts">;

/**
 * @param circuit of the loom as delivered, for what the fuses feed
 * @param whole solver of integer programs; it is asked for the proposal, for each second best and alternative
 */
export function propose(car: Car, plan: PlanTables, circuit: Circuit, whole: Solver): Proposal {
	const solver = inPieces(whole);
	const feeds = feedsOf(circuit);
	const { at, misfits } = situation(car, plan, feeds);
	const partings = partingsOf(at, plan);
	const refused = (hopeless: readonly Hopeless[], size = NO_SIZE): Proposal => {
		return { ...nothing, misfits, newParts: car.newParts, hopeless, size };
	};
	if (!Array.isArray(partings)) {
		const why = `no single wire that may be cut joins ${partings.from} and ${partings.to}`;
		return refused([{ circuit: partings.target, why }]);
	}
	const outlooks = partings.map((parting) =>
		outlookOf(situation(car, plan, feeds, parting).at, plan, solver),
	);
	const best = outlooks.reduce((one, other) => (other.minutes < one.minutes ? other : one));
	const { layout } = best;
	const shown = shownOf(best);
	if (shown.values.length === 0)
		return refused(best.hopeless.length > 0 ? best.hopeless : contending(layout, plan, solver), best.size);
	const taken = chosenOf(layout, shown);
	const built = layout.facilities.filter(({ id }) => taken.some(({ needs }) => needs.includes(id)));
	const { recipe, newParts, applied } = finish(best.at, built, taken);
	const { costs, places, delivered } = best.at;
	const rest = costs.total(best.fixed);
	const bound = Math.min(...outlooks.map((one) => shownOf(one).bound + costs.total(one.fixed)));
	return {
		hopeless: [],
		mode: best.mode,
		choices: taken.map((option) => choiceOf(outlooks, best, plan, option, solver)),
		facilities: built.map(({ text }) => text),
		recipe: timed(new Pricer(costs, places, delivered, newParts), recipe),
		newParts,
		misfits: [...misfits, ...applied.misfits],
		checks: verify(best.at, applied.loom, plan.circuits),
		price: priceRecipe(new Pricer(costs, places, delivered, newParts), recipe),
		fixed: best.fixed,
		minutes: shown.objective + rest,
		bound,
		gap: (shown.objective + rest - bound) / Math.max(1, shown.objective + rest),
		alternatives: MODES.map((name) => alternative(outlooks, name)),
		size: best.size,
	};
}

/** All that can be chosen in one situation, solved for each way of doing the whole. */
interface Outlook {
	readonly at: Situation;
	readonly hopeless: readonly Hopeless[];
	readonly layout: Layout;
	readonly modes: ReadonlyMap<Mode, Solved>;
	readonly mode: Mode;
	/** What is the same whatever is chosen. */
	readonly fixed: Price;
	/** The whole. */
	readonly minutes: number;
	readonly size: Proposal["size"];
}

function outlookOf(at: Situation, plan: PlanTables, solver: Solver): Outlook {
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
const shownOf = ({ modes }: Outlook): Solved => modes.get(cheapest(modes, [MODES[0], MODES[1]]))!;

const cheapest = (modes: ReadonlyMap<Mode, Solved>, names: readonly Mode[]): Mode =>
	names.reduce((best, name) => (modes.get(name)!.objective < modes.get(best)!.objective ? name : best));

const NO_SIZE = { options: 0, dominated: 0, columns: 0, rows: 0 };

const nothing = {
	mode: MODES[0],
	choices: [],
	facilities: [],
	recipe: [],
	checks: [],
	price: NOTHING,
	fixed: NOTHING,
	minutes: 0,
	bound: 0,
	gap: 0,
	alternatives: [],
};

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

const chosenOf = (layout: Layout, { values }: Solved): Option[] =>
	layout.options.filter((_, k) => {
		const over = layout.overlayColumn(k);
		return values[layout.optionColumn(k)]! > 0.5 || (over !== undefined && values[over]! > 0.5);
	});

function choiceOf(
	outlooks: readonly Outlook[],
	best: Outlook,
	plan: PlanTables,
	option: Option,
	solver: Solver,
): Choice {
	const { circuit, way, text, joints, shared, own } = option;
	const next = secondBest(outlooks, option, solver);
	return {
		circuit,
		title: plan.circuits.find(({ target }) => target === circuit)?.title ?? "",
		way,
		text,
		joints,
		price: [...shared.values()].reduce(plus, own),
		second: next && {
			way: next.option.way,
			text: next.option.text,
			moreMinutes: Math.max(0, next.minutes - totalOf(best, shownOf(best))),
		},
		of: best.layout.options.filter((one) => one.circuit === circuit).length,
	};
}

/** The whole solved again with an option forbidden, and those that differ from it in a detail; with every way to part. */
function secondBest(
	outlooks: readonly Outlook[],
	{ circuit, text }: Option,
	solver: Solver,
): { option: Option; minutes: number } | undefined {
	let next: { option: Option; minutes: number } | undefined;
	for (const outlook of outlooks.toSorted((a, b) => a.minutes - b.minutes)) {
		const { layout, modes } = outlook;
		const off = layout.options.flatMap((one, k) => {
			if (one.circuit !== circuit || one.text !== text) return [];
			return [layout.optionColumn(k), ...[layout.overlayColumn(k)].filter((column) => column !== undefined)];
		});
		for (const mode of [MODES[0], MODES[1]] as const) {
			// What costs more even with nothing forbidden need not be asked.
			if (next !== undefined && totalOf(outlook, modes.get(mode)!) >= next.minutes) continue;
			const solved = solver(inMode(layout, mode, off));
			const minutes = totalOf(outlook, solved);
			const option = chosenOf(layout, solved).find((one) => one.circuit === circuit);
			if (option !== undefined && minutes < (next?.minutes ?? Number.POSITIVE_INFINITY))
				next = { option, minutes };
		}
	}
	return next;
}

const totalOf = ({ at, fixed }: Outlook, { objective }: Solved): number => objective + at.costs.total(fixed);

/** The cheapest whole in one way of doing it. */
function alternative(outlooks: readonly Outlook[], mode: Mode): Alternative {
	const minutesOf = (outlook: Outlook) => totalOf(outlook, outlook.modes.get(mode)!);
	const best = outlooks.reduce((one, other) => (minutesOf(other) < minutesOf(one) ? other : one));
	const solved = best.modes.get(mode)!;
	if (solved.values.length === 0) return { mode, minutes: undefined, joints: 0 };
	const joints =
		mode === "new loom" ? 0 : chosenOf(best.layout, solved).reduce((sum, option) => sum + option.joints, 0);
	return { mode, minutes: minutesOf(best), joints };
}

/** The program with the way of doing the whole settled. */
function inMode({ program, modeColumn }: Layout, mode: Mode, off: readonly number[] = []): typeof program {
	const others = MODES.filter((name) => name !== mode).map(modeColumn);
	return held(program, [...others, ...off], [modeColumn(mode)]);
}

const NONE: Solved = { values: [], objective: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY };

/** Circuits without which the rest could be made. */
function contending(layout: Layout, plan: PlanTables, solver: Solver): Hopeless[] {
	const why = "it and another circuit need the same cavity, lead or splice, and there is no other way";
	return plan.circuits
		.filter(({ target }) => solver(inMode(without(layout, target), MODES[0])).values.length > 0)
		.map(({ target }) => ({ circuit: target, why }));
}

/** The program with a circuit's rows let go: those that tie its options to the mode. */
function without(layout: Layout, circuit: string): Layout {
	const { program, options, optionColumn, overlayColumn } = layout;
	const own = new Set(
		options.flatMap((option, k) =>
			option.circuit === circuit ? [optionColumn(k), overlayColumn(k) ?? -1] : [],
		),
	);
	const rows = program.rows.filter(
		({ terms, low, high }) => !(low === 0 && high === 0 && terms.some(([k]) => own.has(k))),
	);
	return { ...layout, program: { ...program, rows } };
}
