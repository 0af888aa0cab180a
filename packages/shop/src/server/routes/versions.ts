/** The versions of a job's recipe: who changed it when, what stood in it, what is different between two. */
import { z } from "zod";
import { versionChangesSchema } from "../../answers/versions.js";
import { recipeVersions, textsOf, type Version, withRecipe } from "../../versions/versions.js";
import { jobOf, jobParams, type Routes, type Shop, typed } from "../api.js";
import { Problem, problemResponses } from "../problem.js";

const versionSchema = z.object({
	version: z.number().int().describe("from 1: what the job came with"),
	time: z.string().describe("ISO 8601, UTC"),
	person: z.string().describe("who brought it; empty: it came with the job"),
	entry: z.string().describe("id of the entry in the history; empty: it came with the job"),
	changed: z.array(z.string()).describe("files that are not as in the version before"),
	kept: z.boolean().describe("false: a text was replaced before replaced texts were kept; it cannot be read"),
});

const number = z.coerce.number().int().min(1);
const params = jobParams.extend({ version: number });
const tags = ["jobs"];

export const versionRoutes: Routes = (shop) => async (instance) => {
	const app = typed(instance);

	app.get(
		"/jobs/:job/recipe/versions",
		{
			config: { right: "look" },
			schema: {
				tags,
				summary: "The versions of the recipe and of what is wanted of it, oldest first",
				params: jobParams,
				response: { 200: z.object({ versions: z.array(versionSchema) }), ...problemResponses },
			},
		},
		async ({ params }) => {
			const { versions, texts } = await history(shop, params.job);
			return { versions: versions.map((one) => summary(one, texts(one) !== undefined)) };
		},
	);

	app.get(
		"/jobs/:job/recipe/versions/:version",
		{
			config: { right: "look" },
			schema: {
				tags,
				summary: "A version of the recipe with its tables",
				params,
				response: {
					200: versionSchema.extend({ tables: z.record(z.string(), z.string()) }),
					...problemResponses,
				},
			},
		},
		async ({ params }) => {
			const { one, tables } = readable(await history(shop, params.job), params.version);
			return { ...summary(one, true), tables };
		},
	);

	app.get(
		"/jobs/:job/recipe/versions/:version/changes",
		{
			config: { right: "look" },
			schema: {
				tags,
				summary: "What a version changes, in the tables and in the loom as converted",
				description: "Both are applied to the car as it is delivered now.",
				params,
				querystring: z.object({ since: number.describe("the version it is held against") }),
				response: { 200: versionChangesSchema, ...problemResponses },
			},
		},
		async ({ params, query }) => {
			const all = await history(shop, params.job);
			const [was, is] = [readable(all, query.since), readable(all, params.version)];
			const since = withRecipe(all.tables, was.tables);
			return shop.calculator.ask("version-changes", withRecipe(all.tables, is.tables), { since });
		},
	);
};

interface History {
	readonly versions: readonly Version[];
	readonly tables: Readonly<Record<string, string>>;
	readonly texts: (version: Version) => Readonly<Record<string, string>> | undefined;
}

async function history({ store }: Shop, id: string): Promise<History> {
	const job = await jobOf(store, id);
	const entries = (await store.entriesOfKinds(["tables"], job.id)).get(job.id) ?? [];
	const tables = await store.tables(job.id);
	const kept = await store.replacedTexts(job.id);
	const versions = recipeVersions(job.created, entries, tables);
	return { versions, tables, texts: (version) => textsOf(version, tables, kept) };
}

/** @throws Problem 404 where there is no such version, or it cannot be read any more */
function readable({ versions, texts }: History, version: number) {
	const one = versions[version - 1];
	if (!one)
		throw new Problem(
			404,
			`there is no version ${version} of this recipe`,
			versions.length === 1 ? "There is only version 1." : `Name one of 1 to ${versions.length}.`,
		);
	const tables = texts(one);
	if (tables) return { one, tables };
	throw new Problem(
		404,
		`the tables of version ${version} were replaced before replaced tables were kept`,
		"Look for them in a backup of that time.",
	);
}

const summary = ({ version, time, person, entry, changed }: Version, kept: boolean) => ({
	...{ version, time, person, entry, kept },
	changed: [...changed],
});
