/** The readings before power, what was read held against them, and the staged power-up. Shapes: docs/json.md. */
import { z } from "zod";
import { powerSchema } from "../../answers/power.js";
import { proveSchema } from "../../answers/prove.js";
import { knownOf } from "../../repairs/known.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const tags = ["answers"];

const bodySchema = z.object({
	leastOhms: z
		.number()
		.min(0.1)
		.max(100_000)
		.default(1)
		.describe("added resistance from which on a poor connection is to be caught"),
	entries: z
		.array(
			z.object({
				row: z.number().int().describe("number on the sheet"),
				value: z.union([z.number().min(0), z.literal("open")]).describe("ohms, or open"),
			}),
		)
		.max(5000)
		.default([])
		.describe("what was read on the sheet"),
});

export const provingRoutes: Routes =
	({ store, calculator }) =>
	async (instance) => {
		const app = typed(instance);

		app.post(
			"/jobs/:job/prove",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "The readings to take before power, and what those taken speak for",
					description: "The first time for a car's tables it takes seconds; the sheet is then kept.",
					params: jobParams,
					body: bodySchema,
					response: { 200: proveSchema, ...problemResponses },
				},
			},
			async ({ params, body }) => {
				const { id } = await jobOf(store, params.job);
				return calculator.ask("prove", await store.tables(id), { ...body, known: await knownOf(store, id) });
			},
		);

		app.get(
			"/jobs/:job/power",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "The stages of the first power-up",
					params: jobParams,
					response: { 200: powerSchema, ...problemResponses },
				},
			},
			async ({ params }) =>
				calculator.ask("power", await store.tables((await jobOf(store, params.job)).id), null),
		);
	};
