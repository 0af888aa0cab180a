/** The server: the API under /api/v1, the tablet app at every other address. */
import helmet from "@fastify/helmet";
import swagger from "@fastify/swagger";
import fastify, { type FastifyInstance } from "fastify";
import { jsonSchemaTransform, serializerCompiler, validatorCompiler } from "fastify-type-provider-zod";
import type { Store } from "../store/store.js";
import type { Routes } from "./api.js";
import { Calculator } from "./calculator/calculator.js";
import { Cars } from "./cars.js";
import { answerProblem } from "./problem.js";
import { answerRoutes } from "./routes/answers.js";
import { entryRoutes } from "./routes/entries.js";
import { jobRoutes } from "./routes/jobs.js";
import { tableRoutes } from "./routes/tables.js";
import { serveApp } from "./serve-app.js";

const ROUTES: readonly Routes[] = [jobRoutes, tableRoutes, entryRoutes, answerRoutes];

/** Largest body taken, in bytes: tables of some ten thousand wires. */
const BODY_LIMIT = 16 * 1024 * 1024;

export interface AppOptions {
	readonly store: Store;
	/** Folder of the built tablet app. */
	readonly web: string;
	/** Told of failures of the server itself. */
	readonly report: (error: unknown) => void;
}

export async function buildApp({ store, web, report }: AppOptions): Promise<FastifyInstance> {
	const app = fastify({ bodyLimit: BODY_LIMIT });
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
	const shop = { store, cars: new Cars(), calculator: new Calculator() };
	// Before the server waits for what is under way: finding faults may take long.
	app.addHook("preClose", () => shop.calculator.close());
	await app.register(
		async (api) => {
			for (const routes of ROUTES) await api.register(routes(shop));
			api.get("/openapi.json", { schema: { hide: true } }, () => app.swagger());
		},
		{ prefix: "/api/v1" },
	);
	await serveApp(app, web);
	await app.ready();
	return app;
}

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
