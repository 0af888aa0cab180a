import { describe, expect, test } from "vitest";
import { JOB, smallServer } from "./server.test-helper.js";

const at = `${JOB}/entries`;
const person = "Kim";

const ENTRIES = [
	{ kind: "codes", body: { codes: ["P0113"], units: ["CU"] } },
	{ kind: "reading", body: { what: "volts", from: "CU.7", to: "body", when: "key-on", value: 2.53 } },
	{
		kind: "reading",
		body: { what: "ohms", from: "K1.85!pin", to: "K1.86", when: "battery-off", value: "open" },
	},
	{
		kind: "reading",
		body: { what: "ohms", from: "K1.85", to: "CU.6", when: "BAT=off; X-CU=unmated", value: 0.1 },
	},
	{ kind: "bench", body: { part: "K1", good: true } },
	{ kind: "reseated", body: { what: "X1" } },
	{ kind: "note", body: { text: "Kabel klemmt unter dem Sitz – 轎車" } },
];

describe("entries", () => {
	test("of every kind come back as sent, chained", async () => {
		const { ask } = await smallServer();
		for (const entry of ENTRIES) {
			const { status, body } = await ask("POST", at, { ...entry, person });
			expect([status, body.kind, body.body]).toEqual([201, entry.kind, entry.body]);
			expect(body.hash).toMatch(/^[0-9a-f]{64}$/);
		}
		const { entries, fault } = (await ask("GET", at)).body;
		expect(
			entries.map((entry: { kind: string; body: unknown }) => ({ kind: entry.kind, body: entry.body })),
		).toEqual(ENTRIES);
		expect(entries[2].previous).toBe(entries[1].hash);
		expect(fault).toBeNull();
		const after = async (place: number) => (await ask("GET", `${at}?after=${place}`)).body;
		expect(await after(4)).toEqual({ entries: entries.slice(4), link: entries[3].hash, fault: null });
		expect((await after(0)).link).toBe("");
		expect(await after(999)).toEqual({ entries: [], link: "", fault: null });
	});

	test("sent twice under one id, stored once; another under that id is refused", async () => {
		const { ask } = await smallServer();
		const entry = {
			id: "tablet-1-0001",
			time: "2030-01-01T08:00:00Z",
			kind: "note",
			body: { text: "a" },
			person,
		};
		const first = await ask("POST", at, entry);
		const again = await ask("POST", at, entry);
		expect([first.status, again.status]).toEqual([201, 200]);
		expect(again.body).toEqual(first.body);
		const other = await ask("POST", at, { ...entry, body: { text: "b" } });
		expect([other.status, other.body.error]).toEqual([409, "another entry has the id tablet-1-0001"]);
		expect((await ask("GET", at)).body.entries.length).toBe(1);
	});

	test.each([
		["no person", { kind: "note", body: { text: "x" } }, /person/],
		["a kind there is not", { kind: "guess", body: {}, person }, /kind/],
		["the server's own kind", { kind: "tables", body: { files: [] }, person }, /kind/],
		[
			"a value that is no number",
			{ kind: "reading", body: { ...ENTRIES[1]!.body, value: "12,5" }, person },
			/value/,
		],
		["an empty note", { kind: "note", body: { text: " " }, person }, /text/],
		["a time without zone", { kind: "note", body: { text: "x" }, person, time: "2030-01-01 08:00" }, /time/],
	])("%s: 400, nothing stored", async (_what, entry, error) => {
		const { ask } = await smallServer();
		const { status, body } = await ask("POST", at, entry);
		expect([status, body.error]).toEqual([400, expect.stringMatching(error)]);
		expect((await ask("GET", at)).body.entries).toEqual([]);
	});

	test.each([
		[
			{ ...ENTRIES[1], body: { ...ENTRIES[1]!.body, from: "CU.99" } },
			"this car has no contact or joint 'CU.99'",
		],
		[
			{ ...ENTRIES[1], body: { ...ENTRIES[1]!.body, when: "upside-down" } },
			"this car has no condition 'upside-down'",
		],
		[
			{ ...ENTRIES[1], body: { ...ENTRIES[1]!.body, when: "BAT=off; X-CU=ajar" } },
			"this car has no condition 'BAT=off; X-CU=ajar'",
		],
		[{ kind: "bench", body: { part: "K9", good: false } }, "this car has no part 'K9'"],
		[{ kind: "function", body: { function: "flies", holds: false } }, "this car has no function 'flies'"],
		[{ kind: "codes", body: { codes: [], units: ["K1"] } }, "this car has no control unit 'K1'"],
	])("what is not on the car: 422, nothing stored", async (entry, error) => {
		const { ask } = await smallServer();
		const { status, body } = await ask("POST", at, { ...entry, person });
		expect([status, body.error]).toEqual([422, error]);
		expect((await ask("GET", at)).body.entries).toEqual([]);
	});
});
