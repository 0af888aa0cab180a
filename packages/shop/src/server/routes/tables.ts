/** Replacing tables of a car: all that are sent or none, and only such that the car can still be opened. */
import type { TableName } from "@loomwright/engine";
import { z } from "zod";
import type { NewEntry } from "../../store/entry/append.js";
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
} satisfies Record<TableName, true>;

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

const storedSchema = z.object({
	changed: z.array(z.string()).describe("files whose text is not as before"),
	misfits: z.number().int().describe("recipe steps that do not fit the car as it is now"),
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
				body: z.object({ tables: z.record(file, text), person }),
				response,
			},
		},
		({ params, body, who }) => replace(shop, params.job, body.tables, writer(who, body.person)),
	);
};

/** Whoever is signed in; where nobody signs in, whoever it is said to be. */
function writer(who: Who, named: string): Pick<NewEntry, "person" | "account" | "standing"> {
	if ("account" in who) return { person: who.name, account: who.account, standing: { role: who.role } };
	return { person: named, standing: { role: "bench" } };
}

async function replace(
	{ store, cars, live }: Shop,
	id: string,
	files: Readonly<Record<string, string>>,
	by: Pick<NewEntry, "person" | "account" | "standing">,
): Promise<z.infer<typeof storedSchema>> {
	const job = await jobOf(store, id);
	let misfits = 0;
	const entry = await store.replaceTables(job.id, files, { id: newId(), ...by }, (tables) => {
		misfits = cars.open(tables).misfits.length;
	});
	if (entry) live.tell({ job: job.id, place: entry.place });
	const changed = entry?.kind === "tables" ? entry.body.files : [];
	return { changed: changed.map((one) => one.name), misfits };
}
