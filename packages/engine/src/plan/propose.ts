/** The recipe that makes all wanted circuits at least cost, what each second best would cost, and the alternatives. */
import type { Circuit } from "../circuit/index.js";
import type { LoomTables, NewParts, RecipeStep } from "../loom/index.js";
import type { Misfit } from "../recipe/index.js";
import { inPieces } from "./apart.js";
import { NOTHING, plus } from "./costs.js";
import { feedsOf } from "./feeds.js";
import { finish } from "./finish.js";
import type { Hopeless } from "./options.js";
import { alternative, contending, secondBest } from "./otherwise.js";
import { chosenOf, type Outlook, outlookOf, type Size, shownOf, totalOf } from "./outlook.js";
import { partingsOf } from "./partings.js";
import { Pricer, priceRecipe, timed } from "./price.js";
import { MODES, type Mode, type Solver } from "./program.js";
import { situation } from "./situation.js";
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
	readonly size: Size;
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
