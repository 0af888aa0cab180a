/** Stands before every route of the API: whose request it is, and whether they may. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import { listPeople } from "../../store/people.js";
import { type Session, secretHash, sessionOf } from "../../store/sessions.js";
import { checkStorable } from "../../store/storable.js";
import type { Store } from "../../store/store.js";
import { Problem } from "../problem.js";
import { may, type Right, type Who } from "./who.js";

declare module "fastify" {
	interface FastifyContextConfig {
		right?: Right;
	}
	interface FastifyRequest {
		who: Who;
	}
}

export const COOKIE = "loomwright";
export const CSRF_HEADER = "x-loomwright-csrf";

/** What must come in the header of each request that changes something: only pages of this server can read it. */
export const csrfOf = (secret: string): string => secretHash(`csrf ${secret}`);

/** Whether anyone is set up yet. People are never deleted, so once true it stays so. */
export class SetUp {
	#people = false;

	constructor(readonly store: Store) {}

	async done(): Promise<boolean> {
		this.#people ||= (await this.store.read(listPeople)).length > 0;
		return this.#people;
	}
}

/** Every route of `app` must name its right in its config; one that does not keeps the server from starting. */
export function guard(app: FastifyInstance, store: Store, setUp: SetUp): void {
	// Set before any route runs.
	app.decorateRequest("who", null as never);
	app.addHook("onRoute", ({ config, method, url }) => {
		if (!config?.right) throw new Error(`${String(method)} ${url} does not say who may call it`);
	});
	app.addHook("onRequest", async (request) => {
		const changes = !["GET", "HEAD", "OPTIONS"].includes(request.method);
		if (changes) checkOrigin(request);
		const ready = await setUp.done();
		if (!ready) checkOwnMachine(request);
		const secret = request.cookies[COOKIE];
		const session = ready && secret ? await readSession(store, secret) : undefined;
		request.who = session ? whoOf(session) : { role: ready ? "nobody" : "bench" };
		const right = request.routeOptions.config.right ?? "manage";
		if (changes && session && secret && request.headers[CSRF_HEADER] !== csrfOf(secret))
			throw new Problem(
				403,
				`the header ${CSRF_HEADER} is missing or wrong`,
				"Reload the page, then do it again.",
			);
		checkRight(request, right);
	});
	app.addHook("preValidation", async ({ body }) => checkStorable(body));
}

const readSession = (store: Store, secret: string): Promise<Session | undefined> =>
	store.read((db) => sessionOf(db, secret, store.now().toISOString()));

function whoOf(session: Session): Who {
	if ("link" in session) return { role: "guest", job: session.link.job, name: session.link.name };
	const { role, id, name } = session.person;
	return { role, account: id, name };
}

function checkRight({ who, params }: FastifyRequest, right: Right): void {
	const { job } = params as { job?: string };
	if (may(who, right, job)) return;
	if (who.role === "nobody")
		throw new Problem(401, "nobody is signed in on this tablet", "Choose your name and enter your PIN.");
	throw right === "manage"
		? new Problem(403, "only the owner may do this", "Ask the owner to sign in and do it.")
		: new Problem(403, `as ${who.role} you may not do this`, "Ask a technician or the owner.");
}

/** A page of another address must not send what looks like a person's own doing. */
function checkOrigin({ headers }: FastifyRequest): void {
	const { origin, host } = headers;
	if (origin === undefined || (URL.canParse(origin) && new URL(origin).host === host)) return;
	throw new Problem(
		403,
		`the page at ${origin.slice(0, 200)} is not of this server`,
		"Open the app at the server's own address; a proxy must hand on the Host header.",
	);
}

const OWN = /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/;

/** Without people, only this machine itself is served, and under no other name. */
function checkOwnMachine({ headers }: FastifyRequest): void {
	if (OWN.test(headers.host ?? "")) return;
	throw new Problem(
		403,
		"this shop has no owner yet and is open on its own machine only",
		"Open http://127.0.0.1 with its port on that machine and set up the owner (docs/shop.md).",
	);
}
