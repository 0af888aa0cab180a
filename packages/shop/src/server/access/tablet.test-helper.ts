/** A server without a port, and tablets of it: each keeps its cookie and says what the app says. */
import type { FastifyInstance } from "fastify";
import { onTestFinished } from "vitest";
import { readFolder } from "../../folder/read-folder.js";
import type { Store } from "../../store/store.js";
import { temporaryFolder, temporaryStore } from "../../store/temporary.test-helper.js";
import { buildApp } from "../app.js";
import { SMALL_CAR } from "../server.test-helper.js";
import { COOKIE, CSRF_HEADER } from "./guard.js";

export const OWNER_PIN = "270385";
export const PIN = "906142";

export interface Tablet {
	// biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
	ask(method: string, path: string, body?: unknown): Promise<{ status: number; body: any }>;
	signIn(person: string, pin?: string): Promise<{ status: number }>;
	cookie: string;
	csrf: string;
}

export interface ShopOfTest {
	readonly app: FastifyInstance;
	readonly store: Store;
	readonly job: string;
	tablet(): Tablet;
	/** Sets up the owner Ola; gives her tablet. */
	owner(): Promise<Tablet>;
	/** Adds a person and signs them in on a tablet of their own. */
	person(owner: Tablet, name: string, role: string): Promise<{ id: string; tablet: Tablet }>;
}

export async function shopOfTest(): Promise<ShopOfTest> {
	const { store } = await temporaryStore();
	const { title, tables, practice } = readFolder(SMALL_CAR);
	const { id: job } = await store.addJob({ title, source: "", tables, practice });
	const app = await buildApp({ store, web: temporaryFolder(), report: (error) => console.error(error) });
	onTestFinished(() => app.close());
	const tablet = () => tabletOf(app);
	return {
		...{ app, store, job, tablet },
		async owner() {
			const own = tablet();
			await own.ask("POST", "/api/v1/setup", { name: "Ola", pin: OWNER_PIN });
			return own;
		},
		async person(owner, name, role) {
			const { body } = await owner.ask("POST", "/api/v1/people", { name, role, pin: PIN });
			const own = tablet();
			await own.signIn(body.id);
			return { id: body.id, tablet: own };
		},
	};
}

function tabletOf(app: FastifyInstance): Tablet {
	const tablet: Tablet = {
		cookie: "",
		csrf: "",
		async ask(method, path, body) {
			const answer = await app.inject({
				method: method as "GET",
				url: path,
				headers: {
					...(tablet.cookie ? { cookie: `${COOKIE}=${tablet.cookie}` } : {}),
					...(tablet.csrf ? { [CSRF_HEADER]: tablet.csrf } : {}),
				},
				...(body === undefined ? {} : { payload: body as object }),
			});
			const set = answer.cookies.find(({ name }) => name === COOKIE);
			if (set) tablet.cookie = set.value;
			const json = answer.body === "" ? undefined : answer.json();
			if (json?.csrf !== undefined) tablet.csrf = json.csrf;
			return { status: answer.statusCode, body: json };
		},
		signIn: (person, pin = PIN) => tablet.ask("POST", "/api/v1/session", { person, pin }),
	};
	return tablet;
}
