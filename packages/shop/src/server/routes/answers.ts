/** Answers out of a job's network, for scripts; the tablet app computes its own. Shapes: docs/json.md. */
import { parseEvidence } from "@loomwright/engine";
import { z } from "zod";
import { compareAnswer, compareSchema } from "../../answers/compare.js";
import { findAnswer, findSchema } from "../../answers/find.js";
import { questionSchema, whichSchema } from "../../answers/question.js";
import { readingAnswer, readingSchema } from "../../answers/reading.js";
import { rulesAnswer, rulesSchema } from "../../answers/rules.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const tags = ["answers"];
const of = whichSchema.default("converted");

export const answerRoutes: Routes =
	({ store, cars }) =>
	async (instance) => {
		const app = typed(instance);
		const carOf = async (id: string) => cars.open(await store.tables((await jobOf(store, id)).id));

		app.get(
			"/jobs/:job/changes",
			{
				schema: {
					tags,
					summary: "What the recipe changes",
					params: jobParams,
					response: { 200: compareSchema, ...problemResponses },
				},
			},
			async ({ params }) => compareAnswer(await carOf(params.job)),
		);

		app.get(
			"/jobs/:job/findings",
			{
				schema: {
					tags,
					summary: "What the rules find",
					params: jobParams,
					querystring: z.object({ of }),
					response: { 200: rulesSchema, ...problemResponses },
				},
			},
			async ({ params, query }) => rulesAnswer(await carOf(params.job), query.of),
		);

		app.post(
			"/jobs/:job/reading",
			{
				schema: {
					tags,
					summary: "What a meter would show",
					params: jobParams,
					body: questionSchema.extend({ of }),
					response: { 200: readingSchema, ...problemResponses },
				},
			},
			async ({ params, body }) => readingAnswer(await carOf(params.job), body, body.of),
		);

		app.post(
			"/jobs/:job/find",
			{
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
				findAnswer(await carOf(params.job), parseEvidence(JSON.stringify(body), "evidence")),
		);
	};
