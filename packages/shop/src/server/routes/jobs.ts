/** The jobs, their tables and their practice evidence. */
import { z } from "zod";
import { recipeVersions } from "../../versions/versions.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const jobSchema = z.object({
	id: z.string(),
	title: z.string(),
	created: z.string().describe("ISO 8601, UTC"),
});

const filesSchema = z.record(z.string(), z.string());
const tags = ["jobs"];

export const jobRoutes: Routes =
	({ store }) =>
	async (instance) => {
		const app = typed(instance);

		app.get(
			"/jobs",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "The jobs, oldest first",
					response: { 200: z.object({ jobs: z.array(jobSchema) }), ...problemResponses },
				},
			},
			async ({ who }) => {
				const jobs = await store.jobs();
				return { jobs: who.role === "guest" ? jobs.filter(({ id }) => id === who.job) : jobs };
			},
		);

		app.get(
			"/jobs/:job",
			{
				config: { right: "look" },
				schema: {
					tags,
					summary: "A job with the tables of its car",
					params: jobParams,
					response: {
						200: jobSchema.extend({
							tables: filesSchema.describe("file name to text"),
							recipe: z
								.object({ version: z.number().int(), time: z.string(), person: z.string() })
								.describe("which version of the recipe these tables hold, since when, by whom"),
							replaced: z
								.number()
								.int()
								.describe("place in the history of the entry that last replaced a table; 0: none did"),
						}),
						...problemResponses,
					},
				},
			},
			async ({ params }) => {
				const job = await jobOf(store, params.job);
				const entries = (await store.entriesOfKinds(["tables"], job.id)).get(job.id) ?? [];
				const tables = await store.tables(job.id);
				const { version, time, person } = recipeVersions(job.created, entries, tables).at(-1)!;
				return { ...job, tables, recipe: { version, time, person }, replaced: entries.at(-1)?.place ?? 0 };
			},
		);

		app.get(
			"/jobs/:job/practice",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "Evidence files that come with the car, to practise on",
					params: jobParams,
					response: {
						200: z.object({
							practice: z.array(z.object({ file: z.string(), title: z.string(), text: z.string() })),
						}),
						...problemResponses,
					},
				},
			},
			async ({ params }) => {
				const { id } = await jobOf(store, params.job);
				const files = Object.entries(await store.practice(id));
				return { practice: files.map(([file, text]) => ({ file, title: titleOf(text) ?? file, text })) };
			},
		);
	};

function titleOf(text: string): string | undefined {
	try {
		const title: unknown = JSON.parse(text).title;
		return typeof title === "string" && title !== "" ? title : undefined;
	} catch {
		return undefined;
	}
}
