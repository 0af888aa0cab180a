/** Requests that are nearly right, or not at all, for every route of the API. */
import fc from "fast-check";
import type { FastifyInstance } from "fastify";

export interface Fuzzed {
	readonly method: string;
	readonly url: string;
	readonly headers: Record<string, string>;
	readonly payload: string;
}

/** Near misses of what the addresses take. */
const word = fc.oneof(
	fc.constantFrom(
		"CU.7",
		"CU.2",
		"key-on",
		"volts",
		"ohms",
		"note",
		"reading",
		"X1",
		"",
		"recipe/1",
		"sign-off",
		"acceptance",
		"correction",
		"idle-fuse",
		"2030-01-01T08:00:00Z",
	),
	fc.constantFrom(
		"owner",
		"apprentice",
		"brakes",
		"alone",
		"270385",
		"../../etc/passwd",
		"%00",
		"null",
		"\ud800",
		"__proto__",
	),
	fc.string(),
	fc.string({ unit: "binary", maxLength: 40 }),
);

/** An address cannot hold a lone surrogate. */
const encoded = (text: string) => encodeURIComponent(text.replaceAll(/\p{Cs}/gu, ""));

const near = fc.record(
	{
		kind: word,
		person: word,
		id: word,
		time: word,
		// A guest's link needs no more than a name, so no name is one.
		name: fc.oneof(fc.constantFrom("", "  ", "x".repeat(61)), fc.integer(), fc.constant(null)),
		role: word,
		pin: word,
		token: word,
		sort: word,
		ability: word,
		ends: word,
		seen: fc.jsonValue(),
		counter: fc.jsonValue(),
		body: fc.oneof(
			fc.record({
				what: word,
				from: word,
				to: word,
				when: word,
				value: fc.jsonValue(),
				step: fc.jsonValue(),
			}),
			fc.record({
				of: word,
				text: word,
				finding: fc.oneof(fc.jsonValue(), fc.record({ rule: word, severity: word, path: fc.jsonValue() })),
				grounds: fc.jsonValue(),
			}),
			fc.jsonValue(),
		),
		...{ what: word, from: word, to: word, when: word, of: word },
		occasions: fc.jsonValue(),
		entries: fc.array(fc.jsonValue(), { maxLength: 3 }),
		tables: fc.dictionary(fc.constantFrom("wires.csv", "parts.csv", "x"), fc.string()),
	},
	{ requiredKeys: [] },
);

const payload = fc.oneof(
	{ weight: 6, arbitrary: near.map((value) => JSON.stringify(value)) },
	{ weight: 2, arbitrary: fc.json() },
	{ weight: 2, arbitrary: fc.string() },
	{ weight: 1, arbitrary: near.map((value) => JSON.stringify(value).slice(0, -3)) },
	{ weight: 1, arbitrary: fc.constant("[".repeat(20_000)) },
);

const contentType = fc.oneof(
	{ weight: 8, arbitrary: fc.constant("application/json") },
	{
		weight: 2,
		arbitrary: fc.constantFrom(
			"text/csv",
			"text/plain",
			"multipart/form-data",
			"multipart/form-data; boundary=b",
			"application/octet-stream",
			"application/json; charset=utf-16",
		),
	},
);

/** Routes as `GET /api/v1/jobs/{job}`; those that end who asks, or go on for ever, are left out. */
async function routesOf(app: FastifyInstance): Promise<string[]> {
	const { paths } = (await app.inject("/api/v1/openapi.json")).json() as { paths: Record<string, object> };
	return Object.entries(paths)
		.flatMap(([path, methods]) => Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`))
		.filter((route) => !/DELETE .*\/session$|\/live$/.test(route));
}

export interface FuzzResult {
	readonly requests: number;
	/** Answers that no request may get, as text. */
	readonly wrong: readonly string[];
	/** How often each status came. */
	readonly statuses: Readonly<Record<number, number>>;
}

/**
 * @param senders headers of whoever sends: each request is sent by one of them
 * @param job id of a job that is there
 */
export async function fuzz(
	app: FastifyInstance,
	job: string,
	senders: readonly Record<string, string>[],
	count: number,
	seed: number,
): Promise<FuzzResult> {
	const request = fc
		.record({
			route: fc.constantFrom(...(await routesOf(app))),
			part: fc.oneof({ weight: 3, arbitrary: fc.constant(job) }, word),
			query: fc.oneof(
				fc.constant(""),
				word.map((text) => `?after=${encoded(text)}`),
			),
			sender: fc.constantFrom(...senders),
			type: contentType,
			payload,
		})
		.map(({ route, part, query, sender, type, payload: sent }): Fuzzed => {
			const [method, path] = route.split(" ") as [string, string];
			const named = path.replaceAll(/\{\w+\}/g, () => encoded(part));
			return { method, url: named + query, headers: { ...sender, "content-type": type }, payload: sent };
		});
	const wrong: string[] = [];
	const statuses: Record<number, number> = {};
	for (const one of fc.sample(request, { numRuns: count, seed })) {
		const { method, url, headers, payload: sent } = one;
		const body = method === "GET" ? {} : { payload: sent };
		const answer = await app.inject({ method: method as "GET", url, headers, ...body });
		statuses[answer.statusCode] = (statuses[answer.statusCode] ?? 0) + 1;
		const fault = faultOf(answer.statusCode, answer.body);
		if (fault) wrong.push(`${fault}: ${method} ${url} ${sent.slice(0, 200)} -> ${answer.body.slice(0, 200)}`);
	}
	return { requests: count, wrong, statuses };
}

function faultOf(status: number, body: string): string | undefined {
	if (status >= 500) return `status ${status}`;
	if (/\n\s+at .+:\d+:\d+|node_modules|\.(ts|js):\d+/.test(body)) return "a stack trace";
	if (status < 400) return undefined;
	const { error, toDo } = JSON.parse(body) as { error?: string; toDo?: string };
	return error && toDo ? undefined : "a refusal without what to do";
}
