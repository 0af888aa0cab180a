/** The built tablet app as files; every address that is no file is its first page, which then shows the place. */
import { existsSync } from "node:fs";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import type { ProblemAnswer } from "./problem.js";

const NOT_BUILT =
	"The tablet app is not built. Run: npm run build\nThe API is described at /api/v1/openapi.json\n";

/** @param folder the app as built; asked at each request whether it is there, so that it can be built later */
export async function serveApp(app: FastifyInstance, folder: string): Promise<void> {
	await app.register(fastifyStatic, {
		root: folder,
		wildcard: true,
		cacheControl: false,
		setHeaders: (response, path) => {
			response.setHeader("cache-control", path.includes("/assets/") ? HASHED : ALWAYS_ASK);
		},
	});
	app.setNotFoundHandler((request, reply) => {
		if (!isPage(request)) return notThere(request, reply);
		if (!existsSync(join(folder, "index.html"))) return reply.code(503).type("text/plain").send(NOT_BUILT);
		return reply.header("cache-control", ALWAYS_ASK).sendFile("index.html");
	});
}

/** Files under assets/ have a hash of their content in their name. */
const HASHED = "public, max-age=31536000, immutable";
const ALWAYS_ASK = "no-cache";

/** A person's browser asking for an address of the app, not a script, a picture or the API. */
function isPage({ method, url, headers }: FastifyRequest): boolean {
	const path = url.split("?", 1)[0]!;
	return (
		(method === "GET" || method === "HEAD") &&
		!/^\/(api|assets)(\/|$)/.test(path) &&
		(headers.accept ?? "").includes("text/html")
	);
}

function notThere({ method, url }: FastifyRequest, reply: FastifyReply): FastifyReply {
	const problem: ProblemAnswer = {
		error: `nothing answers ${method} ${url}`,
		toDo: "GET /api/v1/openapi.json lists what there is.",
		errors: [],
	};
	return reply.code(404).send(problem);
}
