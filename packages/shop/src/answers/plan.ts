/** The proposal of a recipe: how each wanted circuit is made, what it costs, and what else it could be. */
import {
	type Car,
	PLAN_MODES,
	PLAN_WAYS,
	type PlanPrice,
	priceByHand,
	proposalFiles,
	propose,
	readPlanTables,
} from "@loomwright/engine";
import { z } from "zod";
import { highsSolver } from "./highs-solver.js";
import { misfitSchema } from "./question.js";

const priceSchema = z.object({
	minutes: z.number().describe("of work"),
	material: z.number().describe("in the shop's money"),
	risk: z.number().describe("minutes of fault finding that its joints make likely"),
});

export const planSchema = z.object({
	possible: z.boolean().describe("false: some circuit cannot be made, and nothing is proposed"),
	hopeless: z.array(z.object({ circuit: z.string(), why: z.string() })),
	way: z.enum(PLAN_MODES).describe("the cheapest way to do the whole"),
	minutes: z.number().describe("the whole with material and risk, in minutes"),
	bound: z.number().describe("no choice among those offered costs less"),
	gap: z.number().describe("(minutes - bound) / minutes"),
	price: priceSchema.describe("of the whole recipe"),
	byHand: z
		.object({ minutes: z.number(), joints: z.number().int(), price: priceSchema })
		.nullable()
		.describe("the car's own recipe.csv priced in the same table; null: there is none"),
	choices: z.array(
		z.object({
			circuit: z.string(),
			title: z.string(),
			way: z.enum(PLAN_WAYS),
			text: z.string().describe("what is done, in words"),
			joints: z.number().int(),
			price: priceSchema,
			second: z
				.object({
					way: z.enum(PLAN_WAYS),
					text: z.string(),
					moreMinutes: z.number().describe("by which the whole would cost more"),
				})
				.nullable()
				.describe("the best with this choice forbidden; null: there is no other"),
			options: z.number().int().describe("ways compared that can be best or second best"),
		}),
	),
	shared: z.array(z.string()).describe("work that several choices build on"),
	alternatives: z.array(
		z.object({ way: z.enum(PLAN_MODES), minutes: z.number().nullable(), joints: z.number().int() }),
	),
	checks: z.array(
		z.object({
			circuit: z.string(),
			reached: z.string().describe("what it is joined to after the recipe; empty: nothing"),
			ohms: z.number().nullable().describe("to there, with the battery off; null: open"),
			strays: z.array(z.string()).describe("contacts joined to it that should not be"),
		}),
	),
	steps: z.array(z.object({ step: z.string(), kind: z.string(), title: z.string(), place: z.string() })),
	files: z.record(z.string(), z.string()).describe("recipe.csv and new-joints.csv of the proposal"),
	misfits: z.array(misfitSchema).describe("part steps that do not fit this car"),
});

export type PlanAnswer = z.infer<typeof planSchema>;

/**
 * @param files the car's tables, targets.csv among them
 * @throws TableErrors with every error of targets.csv, costs.csv and places.csv
 */
export async function planAnswer(car: Car, files: Readonly<Record<string, string>>): Promise<PlanAnswer> {
	const plan = readPlanTables(files, car.tables);
	const found = propose(car.tables, plan, car.circuit("delivered"), await highsSolver());
	const hand = car.tables.recipe.length > 0 ? priceByHand(car.tables, plan) : undefined;
	const { recipe } = found;
	return {
		possible: found.hopeless.length === 0,
		hopeless: found.hopeless.map(({ circuit, why }) => ({ circuit, why })),
		way: found.mode,
		minutes: found.minutes,
		bound: found.bound,
		gap: found.gap,
		price: priced(found.price),
		byHand:
			hand === undefined ? null : { minutes: hand.minutes, joints: hand.joints, price: priced(hand.price) },
		choices: found.choices.map(({ circuit, title, way, text, joints, price, second, of }) => ({
			circuit,
			title,
			way,
			text,
			joints,
			price: priced(price),
			second: second === undefined ? null : { ...second },
			options: of,
		})),
		shared: [...found.facilities],
		alternatives: found.alternatives.map(({ mode, minutes, joints }) => ({
			way: mode,
			minutes: minutes ?? null,
			joints,
		})),
		checks: found.checks.map(({ circuit, reached, ohms, strays }) => ({
			circuit,
			reached,
			ohms: ohms ?? null,
			strays: [...strays],
		})),
		steps: recipe.map(({ step, kind, title, place }) => ({ step, kind, title, place })),
		files: recipe.length === 0 ? {} : { ...proposalFiles(car.tables, found) },
		misfits: found.misfits.map(({ step, kind, row, column, problem, wanted }) => ({
			step,
			kind,
			row,
			column,
			problem,
			wanted,
		})),
	};
}

const priced = ({ minutes, material, risk }: PlanPrice): z.infer<typeof priceSchema> => ({
	minutes,
	material,
	risk,
});
