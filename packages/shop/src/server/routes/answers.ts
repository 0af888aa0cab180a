/** Answers out of a job's network, for scripts; the tablet app computes its own. Shapes: docs/json.md. */
import { z } from "zod";
import { compareSchema } from "../../answers/compare.js";
import { findSchema } from "../../answers/find.js";
import { questionSchema, whichSchema } from "../../answers/question.js";
import { readingSchema } from "../../answers/reading.js";
import { rulesSchema } from "../../answers/rules.js";
import { knownOf } from "../../repairs/known.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const tags = ["answers"];
const of = whichSchema.default("converted");

export const answerRoutes: Routes =
	({ store, calculator }) =>
	async (instance) => {
		const app = typed(instance);
		const tablesOf = async (id: string) => store.tables((await jobOf(store, id)).id);

		app.get(
			"/jobs/:job/changes",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "What the recipe changes",
					params: jobParams,
					response: { 200: compareSchema, ...problemResponses },
				},
			},
			async ({ params }) => calculator.ask("changes", await tablesOf(params.job), null),
		);

		app.get(
			"/jobs/:job/findings",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "What the rules find",
					params: jobParams,
					querystring: z.object({ of }),
					response: { 200: rulesSchema, ...problemResponses },
				},
			},
			async ({ params, query }) => calculator.ask("findings", await tablesOf(params.job), query),
		);

		app.post(
			"/jobs/:job/reading",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "What a meter would show",
					params: jobParams,
					body: questionSchema.extend({ of }),
					response: { 200: readingSchema, ...problemResponses },
				},
			},
			async ({ params, body }) => calculator.ask("reading", await tablesOf(params.job), body),
		);

		app.post(
			"/jobs/:job/find",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "Which faults the evidence speaks for, and what to do next",
					description: "The body is an evidence file (docs/evidence.md).",
					params: jobParams,
					body: z.record(z.string(), z.unknown()).describe("evidence"),
					response: { 200: findSchema, ...problemResponses },
				},
			},
			async ({ params, body }) =>
				calculator.ask("find", await tablesOf(params.job), {
					evidence: JSON.stringify(body),
					known: await knownOf(store, params.job),
				}),
		);
	};
