/** Links by which a customer looks at one job until they end. */
import { z } from "zod";
import { addLink, endLink, linksOf } from "../../store/sessions.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { newId } from "../new-id.js";
import { Problem, problemResponses } from "../problem.js";

const linkSchema = z.object({
	id: z.string(),
	name: z.string().describe("whom it is for"),
	madeBy: z.string(),
	ends: z.string().describe("ISO 8601, UTC"),
});

const newLinkSchema = z
	.object({
		name: z.string().trim().min(1).max(60).describe("whom it is for"),
		days: z.number().int().min(1).max(90).optional().describe("how long it lasts; 14 where no end is given"),
		ends: z.iso.datetime().optional().describe("when it ends, ISO 8601, UTC; in 90 days at the latest"),
	})
	.refine(({ days, ends }) => days === undefined || ends === undefined, {
		path: ["ends"],
		message: "give either days or ends",
	});

const tags = ["people"];
const DAY_MS = 24 * 60 * 60_000;
const MOST_DAYS = 90;

/** @throws Problem 422 */
function endOf({ days = 14, ends }: z.infer<typeof newLinkSchema>, now: number): string {
	const end = ends === undefined ? now + days * DAY_MS : Date.parse(ends);
	if (end > now && end <= now + MOST_DAYS * DAY_MS) return new Date(end).toISOString();
	throw new Problem(
		422,
		"a link ends after now and within 90 days",
		"Give another end; a new link can be made when this one has ended.",
	);
}

export const guestRoutes: Routes =
	({ store }) =>
	async (instance) => {
		const app = typed(instance);

		app.get(
			"/jobs/:job/guests",
			{
				config: { right: "change" },
				schema: {
					tags,
					summary: "The guests' links of a job, ended ones too",
					params: jobParams,
					response: { 200: z.object({ guests: z.array(linkSchema) }), ...problemResponses },
				},
			},
			async ({ params }) => {
				const { id } = await jobOf(store, params.job);
				const links = await store.read((db) => linksOf(db, id));
				return { guests: links.map(({ made_by, ...link }) => ({ ...link, madeBy: made_by })) };
			},
		);

		app.post(
			"/jobs/:job/guests",
			{
				config: { right: "change" },
				schema: {
					tags,
					summary: "Makes a link for a guest",
					description: "The token is told this once; the page is /#/JOB?guest=TOKEN.",
					params: jobParams,
					body: newLinkSchema,
					response: { 201: linkSchema.extend({ token: z.string() }), ...problemResponses },
				},
			},
			async ({ params, body, who }, reply) => {
				if (who.role === "bench")
					throw new Problem(409, "this shop has no owner yet", "Set up the owner first (docs/shop.md).");
				const { id: job } = await jobOf(store, params.job);
				const made_by = "name" in who ? who.name : "";
				const ends = endOf(body, store.now().getTime());
				const link = { id: newId(), job, name: body.name, made_by, ends };
				const token = await store.write((trx) => addLink(trx, link));
				return reply.code(201).send({ id: link.id, name: link.name, madeBy: made_by, ends, token });
			},
		);

		app.delete(
			"/jobs/:job/guests/:link",
			{
				config: { right: "change" },
				schema: {
					tags,
					summary: "Ends a guest's link at once",
					params: jobParams.extend({ link: z.string() }),
					response: { 200: z.object({ ended: z.string() }), ...problemResponses },
				},
			},
			async ({ params }) => {
				const there = await store.write((trx, now) => endLink(trx, params.job, params.link, now));
				if (!there)
					throw new Problem(404, `there is no link '${params.link}'`, "It may have been taken away.");
				return { ended: params.link };
			},
		);
	};
