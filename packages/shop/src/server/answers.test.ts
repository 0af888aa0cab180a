import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Client, JOB, openSmallServer } from "./server.test-helper.js";

// One server for all: nothing here is stored, and the computing thread starts once.
const data = mkdtempSync(join(tmpdir(), "loomwright-"));
let ask: Client["ask"];
let close: Client["close"];

beforeAll(async () => {
	({ ask, close } = await openSmallServer(data));
});

afterAll(async () => {
	await close();
	rmSync(data, { recursive: true });
});

test("changes: the switch the recipe fits, and the right lamp's own ground", async () => {
	const { status, body } = await ask("GET", `${JOB}/changes`);
	expect(status).toBe(200);
	expect(body.changes).toContainEqual(expect.objectContaining({ kind: "part fitted", part: "S-WRK" }));
	const ground = body.changes.find((change: { contact: string }) => change.contact === "E-R.2");
	expect([ground.before.leads[0].place, ground.after.leads[0].place]).toEqual(["G2", "G3"]);
});

test("findings of either loom", async () => {
	expect((await ask("GET", `${JOB}/findings`)).body.of).toBe("converted");
	expect((await ask("GET", `${JOB}/findings?of=delivered`)).body).toMatchObject({
		of: "delivered",
		misfits: [],
	});
	expect((await ask("GET", `${JOB}/findings?of=later`)).status).toBe(400);
});

test("reading: the temperature input, 5 V x 2252 / (2252 + 2200) by hand in the car's README", async () => {
	const question = { what: "volts", from: "CU.7", to: "CU.2", when: "key-on" };
	const { body } = await ask("POST", `${JOB}/reading`, question);
	expect(body).toMatchObject({ ...question, of: "converted", unit: "V", open: false });
	expect(body.value).toBeCloseTo((5 * 2252) / (2252 + 2200), 2);
	expect(body.low).toBeLessThan(body.value);
	expect(body.high).toBeGreaterThan(body.value);
});

test("a reading that cannot be taken says why", async () => {
	const question = { what: "ohms", from: "CU.7", to: "CU.2", when: "key-on" };
	const live = await ask("POST", `${JOB}/reading`, question);
	expect([live.status, live.body.error]).toEqual([422, expect.stringContaining("ohms")]);
	const nowhere = await ask("POST", `${JOB}/reading`, { ...question, what: "volts", when: "key" });
	expect([nowhere.status, nowhere.body.error]).toEqual([422, "this car has no condition 'key'"]);
	expect(nowhere.body.toDo).toContain("key-on");
});

test("find: the temperature input at its inner 5 V, its code set, the sensor good: something open on its way", async () => {
	const reading = { what: "volts", from: "CU.7", to: "CU.2", when: "key-on", value: 5 };
	const occasions = [{ codes: ["B1A02"], readings: [reading], bench: { "B-TMP": true } }];
	const { status, body } = await ask("POST", `${JOB}/find`, { title: "Cold motor", occasions });
	expect([status, body.title, body.of]).toEqual([200, "Cold motor", "converted"]);
	const chance = (faults: { posterior: number }[]) => faults.reduce((sum, fault) => sum + fault.posterior, 0);
	expect(chance(body.faults) + body.sound).toBeGreaterThan(0.98);
	expect(chance(body.faults) + body.sound).toBeLessThan(1 + 1e-9);
	const onTheWay = body.faults.filter((fault: { path: string[] }) =>
		fault.path.some((name) => /^(CU\.[57]|X-CU|X-TMP|B-TMP.*|SP4|W2\d.*)$/.test(name)),
	);
	expect(chance(onTheWay)).toBeGreaterThan(0.9);
	expect(body.next.question.when).not.toBe("");
});

test("evidence that is not as it should be: 422 with every fault", async () => {
	const { status, body } = await ask("POST", `${JOB}/find`, { occasions: [{ codes: "P0113" }], extra: 1 });
	expect(status).toBe(422);
	expect(body.errors.length).toBe(2);
});

test("asked at once, each gets its own answer, and others are served meanwhile", async () => {
	const question = { what: "volts", from: "CU.7", to: "CU.2", when: "key-on" };
	const found = ask("POST", `${JOB}/find`, { occasions: [{ codes: ["B1A02"] }] });
	const reading = ask("POST", `${JOB}/reading`, question);
	expect((await ask("GET", "/api/v1/jobs")).status).toBe(200);
	expect((await reading).body).toMatchObject(question);
	expect((await found).body.faults.length).toBeGreaterThan(0);
});
