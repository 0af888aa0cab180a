/** The recipe that makes all wanted circuits at least cost, what each second best would cost, and the alternatives. */
import type { Circuit } from "../circuit/index.js";
import type { LoomTables, NewParts, RecipeStep } from "../loom/index.js";
import type { Misfit } from "../recipe/index.js";
import { inPieces } from "./apart.js";
import { NOTHING, plus } from "./costs.js";
import { feedsOf } from "./feeds.js";
import { finish } from "./finish.js";
import { choicesOf, type Hopeless } from "./options.js";
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
 * @param solver of integer programs; it is asked once for the proposal and once for each second best and alternative
 */
export function propose(car: Car, plan: PlanTables, circuit: Circuit, whole: Solver): Proposal {
	const solver = inPieces(whole);
	const { at, misfits } = situation(car, plan, feedsOf(circuit));
	const choices = choicesOf(at, plan.circuits);
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
	const { program } = layout;
	const size = {
		options: choices.options.length,
		dominated: choices.dominated,
		columns: program.costs.length,
		rows: program.rows.length,
	};
	const modes = new Map(
		MODES.map((name) => [name, choices.hopeless.length > 0 ? NONE : solver(inMode(layout, name))]),
	);
	const cheapest = (names: readonly Mode[]) =>
		names.reduce((best, name) => (modes.get(name)!.objective < modes.get(best)!.objective ? name : best));
	const mode = cheapest(MODES);
	// A new loom has no steps: what is shown is the best of those that have.
	const shown = modes.get(cheapest(MODES.filter((name) => name !== "new loom")))!;
	if (shown.values.length === 0) {
		const hopeless = choices.hopeless.length > 0 ? choices.hopeless : contending(layout, plan, solver);
		return { ...nothing, misfits, newParts: car.newParts, hopeless, size };
	}
	const taken = chosenOf(layout, shown);
	const built = layout.facilities.filter(({ id }) => taken.some(({ needs }) => needs.includes(id)));
	const { recipe, newParts, applied } = finish(at, built, taken);
	const pricer = new Pricer(at.costs, at.places, at.delivered, newParts);
	const clock = new Pricer(at.costs, at.places, at.delivered, newParts);
	const fixed = priceRecipe(pricer, finish(at, [], []).recipe);
	const rest = at.costs.total(fixed);
	return {
		hopeless: [],
		mode,
		choices: taken.map((option) => choiceOf(layout, plan, option, modes, solver)),
		facilities: built.map(({ text }) => text),
		recipe: timed(clock, recipe),
		newParts,
		misfits: [...misfits, ...applied.misfits],
		checks: verify(at, applied.loom, plan.circuits),
		price: priceRecipe(pricer, recipe),
		fixed,
		minutes: shown.objective + rest,
		bound: shown.bound + rest,
		gap: (shown.objective - shown.bound) / Math.max(1, shown.objective + rest),
		alternatives: MODES.map((name) => alternative(layout, name, modes.get(name)!, rest)),
		size,
	};
}

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

/** The second best: the whole solved again with the option forbidden, and those that differ from it in a detail. */
function choiceOf(
	layout: Layout,
	plan: PlanTables,
	option: Option,
	modes: ReadonlyMap<Mode, Solved>,
	solver: Solver,
): Choice {
	const off = layout.options.flatMap((one, k) => {
		if (one.circuit !== option.circuit || one.text !== option.text) return [];
		return [layout.optionColumn(k), ...[layout.overlayColumn(k)].filter((column) => column !== undefined)];
	});
	// A way of doing the whole that costs more even with nothing forbidden need not be asked.
	const ranked = ([MODES[0], MODES[1]] as const).toSorted(
		(a, b) => modes.get(a)!.objective - modes.get(b)!.objective,
	);
	const best = modes.get(ranked[0]!)!;
	let next = solver(inMode(layout, ranked[0]!, off));
	if (next.objective > modes.get(ranked[1]!)!.objective) {
		const instead = solver(inMode(layout, ranked[1]!, off));
		if (instead.objective < next.objective) next = instead;
	}
	const other =
		next.values.length === 0
			? undefined
			: chosenOf(layout, next).find((one) => one.circuit === option.circuit);
	const { circuit, way, text, joints, shared, own } = option;
	return {
		circuit,
		title: plan.circuits.find(({ target }) => target === circuit)?.title ?? "",
		way,
		text,
		joints,
		price: [...shared.values()].reduce(plus, own),
		second: other && {
			way: other.way,
			text: other.text,
			moreMinutes: Math.max(0, next.objective - best.objective),
		},
		of: layout.options.filter((one) => one.circuit === circuit).length,
	};
}

function alternative(layout: Layout, mode: Mode, solved: Solved, rest: number): Alternative {
	if (solved.values.length === 0) return { mode, minutes: undefined, joints: 0 };
	const joints =
		mode === "new loom" ? 0 : chosenOf(layout, solved).reduce((sum, option) => sum + option.joints, 0);
	return { mode, minutes: solved.objective + rest, joints };
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
