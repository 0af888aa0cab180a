/** The server: the API under /api/v1, the tablet app at every other address. */
import cookie from "@fastify/cookie";
import helmet from "@fastify/helmet";
import rateLimit from "@fastify/rate-limit";
import { fastifySSE } from "@fastify/sse";
import swagger from "@fastify/swagger";
import fastify, { type FastifyInstance, type FastifyServerOptions } from "fastify";
import { jsonSchemaTransform, serializerCompiler, validatorCompiler } from "fastify-type-provider-zod";
import type { Store } from "../store/store.js";
import { guard, SetUp } from "./access/guard.js";
import type { Routes } from "./api.js";
import { Calculator } from "./calculator/calculator.js";
import { Cars } from "./cars.js";
import { Live } from "./live.js";
import { answerProblem, Problem } from "./problem.js";
import { answerRoutes } from "./routes/answers.js";
import { choosingRoutes } from "./routes/choosing.js";
import { entryRoutes } from "./routes/entries.js";
import { guestRoutes } from "./routes/guests.js";
import { jobRoutes } from "./routes/jobs.js";
import { liveRoutes } from "./routes/live.js";
import { peopleRoutes } from "./routes/people.js";
import { photoRoutes } from "./routes/photos.js";
import { provingRoutes } from "./routes/proving.js";
import { repairRoutes } from "./routes/repairs.js";
import { sessionRoutes } from "./routes/session.js";
import { stateRoutes } from "./routes/state.js";
import { tableRoutes } from "./routes/tables.js";
import { versionRoutes } from "./routes/versions.js";
import { serveApp } from "./serve-app.js";

const ROUTES: readonly Routes[] = [
	sessionRoutes,
	peopleRoutes,
	jobRoutes,
	guestRoutes,
	tableRoutes,
	entryRoutes,
	photoRoutes,
	stateRoutes,
	liveRoutes,
	answerRoutes,
	choosingRoutes,
	versionRoutes,
	provingRoutes,
	repairRoutes,
];

/** Largest body taken, in bytes: tables of some ten thousand wires. */
const BODY_LIMIT = 16 * 1024 * 1024;

export interface AppOptions {
	readonly store: Store;
	/** Folder of the built tablet app. */
	readonly web: string;
	/** The shop's own certificate and its key, in PEM; left out: plain http. */
	readonly tls?: { readonly cert: string; readonly key: string } | undefined;
	/** Folder of what takes long to compute; left out: nothing is kept. */
	readonly kept?: string;
	/** Told of failures of the server itself. */
	readonly report: (error: unknown) => void;
}

export async function buildApp({ store, web, tls, report, kept }: AppOptions): Promise<FastifyInstance> {
	const options: FastifyServerOptions = {
		bodyLimit: BODY_LIMIT,
		// A proxy on this machine may say for whom it asks; nobody else is believed.
		trustProxy: "loopback",
		...(tls ? { https: tls } : {}),
	};
	const app = fastify(options);
	app.setValidatorCompiler(validatorCompiler);
	app.setSerializerCompiler(serializerCompiler);
	app.setErrorHandler(answerProblem(report));
	await app.register(helmet, SECURITY);
	await app.register(swagger, {
		openapi: {
			openapi: "3.1.0",
			info: {
				title: "Loomwright",
				version: "1",
				description: "The shop's jobs and what their networks answer.",
			},
		},
		transform: jsonSchemaTransform,
	});
	await app.register(cookie);
	await app.register(rateLimit, { global: false, errorResponseBuilder: tooMany });
	await app.register(fastifySSE);
	const setUp = new SetUp(store);
	const live = new Live();
	const shop = { store, cars: new Cars(), calculator: new Calculator(kept), live, setUp };
	let stopHearing = async () => {};
	// Before the server waits for what is under way: finding faults may take long, and tablets listen for ever.
	app.addHook("preClose", async () => {
		await stopHearing();
		live.close();
		await shop.calculator.close();
	});
	await app.register(
		async (api) => {
			guard(api, store, setUp);
			for (const routes of ROUTES) await api.register(routes(shop));
			api.get("/openapi.json", { config: { right: "open" }, schema: { hide: true } }, () => app.swagger());
		},
		{ prefix: "/api/v1" },
	);
	await serveApp(app, web);
	await app.ready();
	stopHearing = await store.hear({ heard: (news) => live.tell(news), missed: () => live.close() });
	return app;
}

const tooMany = (_request: unknown, { ttl }: { ttl: number }): Problem =>
	new Problem(
		429,
		"too many attempts from this address",
		`Wait ${Math.ceil(ttl / 1000)} seconds, then try again.`,
	);

/**
 * The app runs its own scripts and workers only. Styles may be inline: the controls set sizes that way.
 * Nothing here demands https: in a shop the tablets reach the server over its plain address.
 */
const SECURITY = {
	contentSecurityPolicy: {
		useDefaults: false,
		directives: {
			defaultSrc: ["'self'"],
			scriptSrc: ["'self'"],
			workerSrc: ["'self'", "blob:"],
			styleSrc: ["'self'", "'unsafe-inline'"],
			imgSrc: ["'self'", "data:", "blob:"],
			fontSrc: ["'self'", "data:"],
			connectSrc: ["'self'"],
			objectSrc: ["'none'"],
			baseUri: ["'self'"],
			formAction: ["'self'"],
			frameAncestors: ["'none'"],
		},
	},
	strictTransportSecurity: false,
	// Browsers heed these on secure addresses only, and complain of them elsewhere.
	crossOriginOpenerPolicy: false,
	originAgentCluster: false,
} as const;
