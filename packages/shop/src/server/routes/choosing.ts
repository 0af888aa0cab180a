/** Answers for choosing how a car's wiring is done, and checking the choice. Shapes: docs/json.md. */
import { z } from "zod";
import { planSchema } from "../../answers/plan.js";
import { whichSchema } from "../../answers/question.js";
import { sizeSchema } from "../../answers/size.js";
import { transferSchema } from "../../answers/transfer.js";
import { whatIfSchema } from "../../answers/what-if.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const tags = ["answers"];
const of = whichSchema.default("converted");

const supposedSchema = z.union([
	z.object({
		table: z.string().describe("name of the table, without its ending"),
		row: z.string().describe("what stands in its first column"),
		column: z.string(),
		cell: z.string().describe("what would stand there"),
	}),
	z.object({ without: z.string().describe("a step of the recipe that is left out") }),
]);

export const choosingRoutes: Routes =
	({ store, calculator }) =>
	async (instance) => {
		const app = typed(instance);
		const tablesOf = async (id: string) => store.tables((await jobOf(store, id)).id);

		app.post(
			"/jobs/:job/plan",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "The recipe that costs least, out of the car's targets.csv",
					description: "Takes seconds. Nothing is stored: a proposal becomes the recipe by PUT of its files.",
					params: jobParams,
					response: { 200: planSchema, ...problemResponses },
				},
			},
			async ({ params }) => calculator.ask("plan", await tablesOf(params.job), null),
		);

		app.get(
			"/jobs/:job/sizes",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "What each wire, fuse, load and splice carries, and whether it is made for it",
					params: jobParams,
					querystring: z.object({ of }),
					response: { 200: sizeSchema, ...problemResponses },
				},
			},
			async ({ params, query }) => calculator.ask("sizes", await tablesOf(params.job), query),
		);

		app.post(
			"/jobs/:job/what-if",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "What one change would do to readings, findings, sizes and work; nothing is stored",
					params: jobParams,
					body: z.object({ of, change: supposedSchema }),
					response: { 200: whatIfSchema, ...problemResponses },
				},
			},
			async ({ params, body }) =>
				calculator.ask("what-if", await tablesOf(params.job), { of: body.of, supposed: body.change }),
		);

		app.post(
			"/jobs/:job/transfer",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "The job's recipe held against the car of another job",
					params: jobParams,
					body: z.object({ to: z.string().describe("id of the other job") }),
					response: { 200: transferSchema, ...problemResponses },
				},
			},
			async ({ params, body }) =>
				calculator.ask("transfer", await tablesOf(params.job), { to: await tablesOf(body.to) }),
		);
	};
