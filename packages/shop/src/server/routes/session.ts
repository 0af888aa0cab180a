/** Setting up the owner, signing in by name and PIN, quick switch, guests' links. */
import type { FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { ROLES } from "../../people/abilities.js";
import { addPerson, countAttempt, findPerson, forgetMisses, listPeople } from "../../store/people.js";
import { closeSession, linkOf, openSession } from "../../store/sessions.js";
import { COOKIE, csrfOf } from "../access/guard.js";
import { hashPin, pinFits, pinSchema } from "../access/pins.js";
import type { Who } from "../access/who.js";
import { type Routes, type Shop, typed } from "../api.js";
import { newId } from "../new-id.js";
import { Problem, problemResponses } from "../problem.js";

/** A working day; then everyone signs in anew. */
const SESSION_MS = 12 * 60 * 60_000;

const whoSchema = z.object({
	role: z.enum([...ROLES, "bench", "guest", "nobody"]),
	name: z.string().describe("empty: not signed in"),
	account: z.string().describe("id of the person; empty: not signed in as one"),
	job: z.string().describe("the one job a guest may look at; else empty"),
});

const sessionSchema = z.object({
	setUp: z.boolean().describe("whether the shop has an owner"),
	who: whoSchema,
	csrf: z.string().describe("to be sent as x-loomwright-csrf with every request that changes something"),
	people: z.array(z.object({ id: z.string(), name: z.string() })).describe("who may sign in here"),
});

const nameSchema = z.string().trim().min(1).max(60);
const tags = ["people"];

/** So many from one address in a minute; a person's own wrong PINs are counted besides. */
const config = { right: "open", rateLimit: { max: 30, timeWindow: 60_000 } } as const;

export const sessionRoutes: Routes = (shop) => async (instance) => {
	const app = typed(instance);
	const { store } = shop;

	app.get(
		"/session",
		{
			config: { right: "open" },
			schema: {
				tags,
				summary: "Who is signed in on this tablet, and who may sign in",
				response: { 200: sessionSchema, ...problemResponses },
			},
		},
		(request) => told(shop, request.who, request.cookies[COOKIE]),
	);

	app.post(
		"/setup",
		{
			config,
			schema: {
				tags,
				summary: "Sets up the owner, once, from the server's own machine",
				body: z.object({ name: nameSchema, pin: pinSchema }),
				response: { 200: sessionSchema, ...problemResponses },
			},
		},
		async (request, reply) => {
			const { name, pin } = request.body;
			const row = { id: newId(), name, role: "owner", pin: await hashPin(pin) } as const;
			await store.write(async (trx, time) => {
				if ((await listPeople(trx)).length > 0)
					throw new Problem(409, "this shop has its people already", "Sign in; the owner adds more people.");
				await addPerson(trx, row, time);
			});
			return signIn(shop, request, reply, { role: "owner", account: row.id, name }, { person: row.id });
		},
	);

	app.post(
		"/session",
		{
			config,
			schema: {
				tags,
				summary: "Signs a person in on this tablet, in place of who was",
				body: z.object({ person: z.string().max(64), pin: z.string().max(64) }),
				response: { 200: sessionSchema, ...problemResponses },
			},
		},
		async (request, reply) => {
			const person = await store.read((db) => findPerson(db, request.body.person));
			const known = person?.active === 1 ? person : undefined;
			const wait = known ? await store.write((trx) => countAttempt(trx, known, store.now())) : 0;
			if (wait > 0)
				throw new Problem(429, "too many wrong PINs for this name", `Wait ${wait} seconds, then try again.`);
			if (!(await pinFits(known?.pin, request.body.pin)) || !known)
				throw new Problem(401, "name and PIN do not go together", "Try again; the owner can set a new PIN.");
			await store.write((trx) => forgetMisses(trx, known.id));
			const who = { role: known.role, account: known.id, name: known.name };
			return signIn(shop, request, reply, who, { person: known.id });
		},
	);

	app.post(
		"/session/guest",
		{
			config,
			schema: {
				tags,
				summary: "Opens a guest's link on this device",
				body: z.object({ token: z.string().max(100) }),
				response: { 200: sessionSchema, ...problemResponses },
			},
		},
		async (request, reply) => {
			const now = store.now().toISOString();
			const link = await store.read((db) => linkOf(db, request.body.token, now));
			if (!link)
				throw new Problem(401, "this link has ended, or is not whole", "Ask the shop for a new one.");
			const who = { role: "guest", job: link.job, name: link.name } as const;
			return signIn(shop, request, reply, who, { guest_link: link.id });
		},
	);

	app.delete(
		"/session",
		{
			config: { right: "open" },
			schema: {
				tags,
				summary: "Signs out",
				response: { 200: sessionSchema, ...problemResponses },
			},
		},
		async (request, reply) => {
			const secret = request.cookies[COOKIE];
			if (secret) await store.write((trx) => closeSession(trx, secret));
			reply.clearCookie(COOKIE, { path: "/" });
			const role = (await shop.setUp.done()) ? "nobody" : "bench";
			return told(shop, { role }, undefined);
		},
	);
};

async function signIn(
	shop: Shop,
	request: FastifyRequest,
	reply: FastifyReply,
	who: Who,
	whose: { person: string } | { guest_link: string },
): Promise<z.infer<typeof sessionSchema>> {
	const before = request.cookies[COOKIE];
	const now = shop.store.now();
	const ends = new Date(now.getTime() + SESSION_MS).toISOString();
	const secret = await shop.store.write(async (trx, time) => {
		if (before) await closeSession(trx, before);
		return openSession(trx, { ...whose, ends }, time);
	});
	reply.setCookie(COOKIE, secret, {
		path: "/",
		httpOnly: true,
		sameSite: "strict",
		secure: request.protocol === "https",
		maxAge: SESSION_MS / 1000,
	});
	return told(shop, who, secret);
}

async function told(
	{ store, setUp }: Shop,
	who: Who,
	secret: string | undefined,
): Promise<z.infer<typeof sessionSchema>> {
	const people = who.role === "guest" ? [] : await store.read(listPeople);
	return {
		setUp: await setUp.done(),
		who: {
			role: who.role,
			name: "name" in who ? who.name : "",
			account: "account" in who ? who.account : "",
			job: "job" in who ? who.job : "",
		},
		csrf: secret && who.role !== "nobody" ? csrfOf(secret) : "",
		people: people.filter(({ active }) => active === 1).map(({ id, name }) => ({ id, name })),
	};
}
