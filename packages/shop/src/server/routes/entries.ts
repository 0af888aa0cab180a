/** A job's history: read it, add to it. */
import { z } from "zod";
import { kept, written } from "../../store/entry/kinds.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { newId } from "../new-id.js";
import { problemResponses } from "../problem.js";
import { checkNames } from "./entry-names.js";

const person = z.string().trim().min(1).max(100).describe("who saw or did it");

const id = z
	.string()
	.regex(/^[A-Za-z0-9_-]{8,64}$/, "8 to 64 letters, digits, - or _")
	.describe("chosen by the sender, so that sending it twice stores it once");

const time = z.iso.datetime().describe("when it happened, ISO 8601, UTC");

const entrySchema = kept.and(
	z.object({
		id: z.string(),
		place: z.number().int().describe("in the job's history, from 1"),
		time,
		stored: time.describe("when the server stored it"),
		person: z.string(),
		previous: z.string().describe("hash of the entry before it; empty for the first"),
		hash: z.string().describe("SHA-256, hexadecimal"),
	}),
);

const newEntrySchema = written.and(z.object({ id: id.optional(), time: time.optional(), person }));
const tags = ["history"];

export const entryRoutes: Routes =
	({ store, cars }) =>
	async (instance) => {
		const app = typed(instance);

		app.get(
			"/jobs/:job/entries",
			{
				schema: {
					tags,
					summary: "The job's history, oldest first",
					params: jobParams,
					querystring: z.object({
						after: z.coerce.number().int().min(0).default(0).describe("only those after this place"),
					}),
					response: {
						200: z.object({
							entries: z.array(entrySchema),
							fault: z
								.string()
								.nullable()
								.describe("where the history is not as it was written, in words; null: it stands"),
						}),
						...problemResponses,
					},
				},
			},
			async ({ params, query }) => {
				const job = await jobOf(store, params.job);
				const fault = (await store.verify(job.id)) ?? null;
				return { entries: await store.entries(job.id, query.after), fault };
			},
		);

		app.post(
			"/jobs/:job/entries",
			{
				schema: {
					tags,
					summary: "Adds an entry to the job's history",
					description: "201: added. 200: it was there already, under the same id with the same content.",
					params: jobParams,
					body: newEntrySchema,
					response: { 200: entrySchema, 201: entrySchema, ...problemResponses },
				},
			},
			async ({ params, body }, reply) => {
				const job = await jobOf(store, params.job);
				checkNames(cars.open(await store.tables(job.id)), body);
				const { entry, added } = await store.append(job.id, { ...body, id: body.id ?? newId() });
				return reply.code(added ? 201 : 200).send(entry);
			},
		);
	};
