/** Replacing tables of a car: all that are sent or none, and only such that the car can still be opened. */
import { type Car, type PLAN_TABLES, readPlanTables, type TableName } from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf } from "../../answers/question.js";
import { changedRows, rowChangeSchema } from "../../answers/row-changes.js";
import type { NewEntry } from "../../store/entry/append.js";
import { changedFiles, type FileChanges, type Files } from "../../store/jobs.js";
import type { Who } from "../access/who.js";
import { jobOf, jobParams, type Routes, type Shop, typed } from "../api.js";
import { newId } from "../new-id.js";
import { problemResponses } from "../problem.js";

const TABLES = {
	parts: true,
	contacts: true,
	wires: true,
	joints: true,
	conditions: true,
	monitors: true,
	functions: true,
	recipe: true,
	"new-parts": true,
	"new-contacts": true,
	"new-joints": true,
	targets: true,
	costs: true,
	places: true,
} satisfies Record<TableName | (typeof PLAN_TABLES)[number], true>;

const file = z
	.string()
	.refine(
		(name) => {
			const table = /^([a-z-]+)\.(csv|tsv|tab|txt)$/.exec(name)?.[1];
			return table !== undefined && Object.hasOwn(TABLES, table);
		},
		`one of ${Object.keys(TABLES).join(", ")}, with the ending .csv`,
	)
	.describe("a table's file name, e.g. wires.csv (docs/tables.md)");

const person = z.string().trim().max(100).default("").describe("who changed it");
const text = z.string().max(8_000_000).describe("the whole table");
const texts = z.record(file, text.nullable().describe("the whole table; null: the table goes"));

const storedSchema = z.object({
	changed: z.array(z.string()).describe("files whose text is not as before"),
	misfits: z.number().int().describe("recipe steps that do not fit the car as it is now"),
});

const trialSchema = z.object({
	tables: z.array(
		z.object({
			name: z.string(),
			rows: z.array(rowChangeSchema).describe("that came, went or changed"),
		}),
	),
	misfits: z.array(misfitSchema).describe("recipe steps that would not fit the car"),
});

const tags = ["jobs"];

export const tableRoutes: Routes = (shop) => async (instance) => {
	// A table may come as it is in the file: curl -X PUT -H 'content-type: text/csv' --data-binary @wires.csv
	instance.addContentTypeParser(
		["text/csv", "text/tab-separated-values", "text/plain"],
		{ parseAs: "string" },
		(_request, text, done) => done(null, { text }),
	);
	const app = typed(instance);
	const response = { 200: storedSchema, ...problemResponses };

	app.put(
		"/jobs/:job/tables/:file",
		{
			config: { right: "change" },
			schema: {
				tags,
				summary: "Replaces one table of the job's car",
				description: "The body may also be the table itself, as text/csv. 422: nothing was stored.",
				params: jobParams.extend({ file }),
				querystring: z.object({ person }),
				body: z.object({ text }),
				response,
			},
		},
		({ params, query, body, who }) =>
			replace(shop, params.job, { [params.file]: body.text }, writer(who, query.person)),
	);

	app.put(
		"/jobs/:job/tables",
		{
			config: { right: "change" },
			schema: {
				tags,
				summary: "Replaces several tables of the job's car together",
				description: "422: nothing was stored.",
				params: jobParams,
				body: z.object({ tables: texts, person }),
				response,
			},
		},
		({ params, body, who }) => replace(shop, params.job, body.tables, writer(who, body.person)),
	);

	app.post(
		"/jobs/:job/tables/trial",
		{
			config: { right: "read" },
			schema: {
				tags,
				summary: "What replacing tables would change; nothing is stored",
				description: "422: every error, by file, row and column.",
				params: jobParams,
				body: z.object({ tables: texts }),
				response: { 200: trialSchema, ...problemResponses },
			},
		},
		async ({ params, body }) => {
			const before = await shop.store.tables((await jobOf(shop.store, params.job)).id);
			const after = changedFiles(before, body.tables);
			const car = opened(shop, body.tables, after);
			const tables = Object.keys(body.tables).map((name) => ({
				name,
				rows: changedRows(before[name], after[name]),
			}));
			return { tables, misfits: misfitsOf(car, "converted") };
		},
	);
};

/** Whoever is signed in; where nobody signs in, whoever it is said to be. */
function writer(who: Who, named: string): Pick<NewEntry, "person" | "account" | "standing"> {
	if ("account" in who) return { person: who.name, account: who.account, standing: { role: who.role } };
	return { person: named, standing: { role: "bench" } };
}

async function replace(
	shop: Shop,
	id: string,
	files: FileChanges,
	by: Pick<NewEntry, "person" | "account" | "standing">,
): Promise<z.infer<typeof storedSchema>> {
	const { store, live } = shop;
	const job = await jobOf(store, id);
	let misfits = 0;
	const entry = await store.replaceTables(job.id, files, { id: newId(), ...by }, (tables) => {
		misfits = opened(shop, files, tables).misfits.length;
	});
	if (entry) live.tell({ job: job.id, place: entry.place });
	const changed = entry?.kind === "tables" ? entry.body.files : [];
	return { changed: changed.map((one) => one.name), misfits };
}

/**
 * The car with the tables as they would be.
 * @throws TableErrors also of targets, costs and places, where one of them is sent
 */
function opened({ cars }: Shop, sent: FileChanges, tables: Files): Car {
	const car = cars.open(tables);
	if (Object.entries(sent).some(([name, text]) => text !== null && PLANNING.test(name)))
		readPlanTables(
			Object.keys(tables).some((name) => name.startsWith("targets.")) ? tables : { ...tables, ...NO_TARGETS },
			car.tables,
		);
	return car;
}

const PLANNING = /^(targets|costs|places)\./;

/** Costs and places may come before what is wanted. */
const NO_TARGETS = { "targets.csv": "target" };
