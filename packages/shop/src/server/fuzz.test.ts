import fc from "fast-check";
import { expect, test } from "vitest";
import { JOB, smallServer } from "./server.test-helper.js";

/** Near misses of what the addresses take, and whatever else JSON can be. */
const word = fc.oneof(
	fc.constantFrom("CU.7", "CU.2", "key-on", "volts", "ohms", "note", "reading", "X1", ""),
	fc.string(),
);
const near = fc.record(
	{
		kind: word,
		person: word,
		id: word,
		time: word,
		body: fc.oneof(
			fc.record({ what: word, from: word, to: word, when: word, value: fc.jsonValue() }),
			fc.jsonValue(),
		),
		what: word,
		from: word,
		to: word,
		when: word,
		of: word,
		occasions: fc.jsonValue(),
		tables: fc.dictionary(fc.constantFrom("wires.csv", "parts.csv", "x"), fc.string()),
	},
	{ requiredKeys: [] },
);

test.each([
	["POST", "/entries"],
	["POST", "/reading"],
	["POST", "/find"],
	["PUT", "/tables"],
	["PUT", "/tables/wires.csv"],
])("%s %s: whatever is sent, never a failure of the server, and a refusal says why", async (method, path) => {
	const { ask } = await smallServer();
	const before = (await ask("GET", JOB)).body;
	const bodies = fc.oneof(near, fc.jsonValue());
	await fc.assert(
		fc.asyncProperty(bodies, async (sent) => {
			const { status, body } = await ask(method, JOB + path, sent);
			expect(status).toBeLessThan(500);
			if (status >= 400) expect([body.error, body.toDo]).not.toContain("");
		}),
		{ seed: 21, numRuns: 60 },
	);
	expect((await ask("GET", JOB)).body).toEqual(before);
	expect((await ask("GET", `${JOB}/entries`)).body.fault).toBeNull();
});
