/** A job's history: read it, add to it, one entry at a time or what a tablet wrote while it was away. */
import type { Car } from "@loomwright/engine";
import { z } from "zod";
import type { Entry, NewEntry } from "../../store/entry/append.js";
import { kept, written } from "../../store/entry/kinds.js";
import type { JobRow } from "../../store/schema.js";
import { standingOf } from "../access/entry-rights.js";
import type { Who } from "../access/who.js";
import { jobOf, jobParams, type Routes, type Shop, typed } from "../api.js";
import { newId } from "../new-id.js";
import { Problem, problemOf, problemResponses } from "../problem.js";
import { checkNames } from "./entry-names.js";

const person = z.string().trim().min(1).max(100);

const id = z
	.string()
	.regex(/^[A-Za-z0-9_-]{8,64}$/, "8 to 64 letters, digits, - or _")
	.describe("chosen by the sender, so that sending it twice stores it once");

const time = z.iso.datetime().describe("when it happened, ISO 8601, UTC");
const count = z.number().int().min(0).max(2_000_000_000);

const causeSchema = z.object({
	account: z.string().describe("id of the person who was signed in; empty where nobody signs in"),
	device: z.string().describe("the tablet it was written on; empty: not given"),
	counter: count.describe("the tablet's own count of what was written on it, from 1; 0: not given"),
	seen: count.describe("last place of the history the writer had seen"),
});

const entrySchema = kept.and(
	causeSchema.extend({
		id: z.string(),
		place: z.number().int().describe("in the job's history, from 1"),
		time,
		stored: time.describe("when the server stored it"),
		person: z.string(),
		standing: z
			.object({ role: z.string(), sort: z.string().optional(), ability: z.string().optional() })
			.nullable()
			.describe("by what right it was written, as it was then"),
		previous: z.string().describe("hash of the entry before it; empty for the first"),
		hash: z.string().describe("SHA-256, hexadecimal"),
	}),
);

const newEntrySchema = written.and(
	z.object({
		id: id.optional(),
		time: time.optional(),
		person: person.optional().describe("who saw or did it; needed only where nobody signs in"),
		account: z.string().max(64).optional().describe("who was signed in when it was written"),
		device: z.string().max(64).optional(),
		counter: count.optional(),
		seen: count.optional(),
	}),
);
type Sent = z.infer<typeof newEntrySchema>;

const tags = ["history"];

export const entryRoutes: Routes = (shop) => async (instance) => {
	const app = typed(instance);
	const { store } = shop;

	app.get(
		"/jobs/:job/entries",
		{
			config: { right: "look" },
			schema: {
				tags,
				summary: "The job's history, oldest first",
				description:
					"Whoever has it up to a place asks for what is after that, and compares `link` with the hash of the " +
					"last entry they have: where the two differ, this is another history, e.g. of a backup.",
				params: jobParams,
				querystring: z.object({
					after: z.coerce
						.number()
						.int()
						.min(0)
						.max(2_000_000_000)
						.default(0)
						.describe("only those after this place"),
				}),
				response: {
					200: z.object({
						entries: z.array(entrySchema),
						link: z.string().describe("hash of the entry at `after`; empty: there is none"),
						fault: z
							.string()
							.nullable()
							.describe(
								"where the history, from `after` on, is not as it was written, in words; null: it stands",
							),
					}),
					...problemResponses,
				},
			},
		},
		async ({ params, query }) => {
			const job = await jobOf(store, params.job);
			const { entries, link, fault = null } = await store.history(job, query.after);
			return { entries: [...entries], link, fault };
		},
	);

	app.post(
		"/jobs/:job/entries",
		{
			config: { right: "write" },
			schema: {
				tags,
				summary: "Adds an entry to the job's history",
				description: "201: added. 200: it was there already, under the same id with the same content.",
				params: jobParams,
				body: newEntrySchema,
				response: { 200: entrySchema, 201: entrySchema, ...problemResponses },
			},
		},
		async ({ params, body, who }, reply) => {
			const job = await jobOf(store, params.job);
			const { entry, added } = await add(shop, job, await carOf(shop, job), who, body);
			return reply.code(added ? 201 : 200).send(entry);
		},
	);

	app.post(
		"/jobs/:job/queue",
		{
			config: { right: "write" },
			schema: {
				tags,
				summary: "Takes in what a tablet wrote while it was away, in its order",
				description:
					"Each entry is stored, was there already, or is refused by itself. Sending the whole again is safe; " +
					"on a status of 500 or above, or none, send it again.",
				params: jobParams,
				body: z.object({ entries: z.array(newEntrySchema.and(z.object({ id }))).max(500) }),
				response: {
					200: z.object({
						results: z.array(
							z.object({
								id: z.string(),
								outcome: z.enum(["added", "there", "refused"]),
								place: z.number().int().describe("0: refused"),
								error: z.string().describe("why it was refused; else empty"),
								toDo: z.string(),
							}),
						),
					}),
					...problemResponses,
				},
			},
		},
		async ({ params, body, who }) => {
			const job = await jobOf(store, params.job);
			const results = [];
			const car = await carOf(shop, job);
			for (const sent of body.entries) results.push(await outcome(shop, job, car, who, sent));
			return { results };
		},
	);
};

const carOf = async ({ store, cars }: Shop, job: JobRow): Promise<Car> =>
	cars.open(await store.tables(job.id));

async function outcome(shop: Shop, job: JobRow, car: Car, who: Who, sent: Sent & { id: string }) {
	try {
		const { entry, added } = await add(shop, job, car, who, sent);
		return {
			id: sent.id,
			outcome: added ? "added" : "there",
			place: entry.place,
			error: "",
			toDo: "",
		} as const;
	} catch (error) {
		const { status, message, toDo } = problemOf(error);
		// A failure of the server's own is no refusal: the tablet keeps the entry and sends it again.
		if (status >= 500) throw error;
		return { id: sent.id, outcome: "refused", place: 0, error: message, toDo } as const;
	}
}

/** @throws Problem when the person may not, BadInput when it names what the car has not, EntryClash */
async function add(
	shop: Shop,
	job: JobRow,
	car: Car,
	who: Who,
	sent: Sent,
): Promise<{ entry: Entry; added: boolean }> {
	const { store, live } = shop;
	if (who.role === "guest" || who.role === "nobody")
		throw new Problem(403, "guests only look", "Ask the shop.");
	const entry: NewEntry = { ...sent, ...writerOf(who, sent), id: sent.id ?? newId() };
	const there = await store.entry(entry.id);
	if (!there) {
		checkNames(car, sent);
		await checkPhoto(shop, job, sent);
		const standing = await standingOf({ store, car, job: job.id, who, seen: sent.seen }, sent);
		const result = await store.append(job.id, { ...entry, standing });
		live.tell({ job: job.id, place: result.entry.place });
		return result;
	}
	// What was stored stays stored, whatever has become of rights or tables since.
	return store.append(job.id, entry);
}

/** Where people sign in, whoever is signed in is who wrote it. */
function writerOf(who: Who, sent: Sent): { person: string; account: string } {
	if (!("account" in who)) {
		if (sent.person !== undefined) return { person: sent.person, account: "" };
		throw new Problem(400, "person: say who saw or did it", "Give a name; nobody signs in on this machine.");
	}
	if (sent.account !== undefined && sent.account !== "" && sent.account !== who.account)
		throw new Problem(
			403,
			"this was written by someone else than is signed in now",
			"Whoever wrote it signs in on this tablet; it is then sent.",
		);
	return { person: who.name, account: who.account };
}

async function checkPhoto({ store }: Shop, job: JobRow, sent: Sent): Promise<void> {
	if (sent.kind !== "photo" || (await store.attachment(job.id, sent.body.photo))) return;
	throw new Problem(
		422,
		"the photo itself has not come yet",
		`Send it to /api/v1/jobs/${job.id}/photos first.`,
	);
}
