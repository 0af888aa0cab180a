/** A repair entered changes what finding says of the next car, and taken back leaves it as it was. */
import { expect, test } from "vitest";
import { knownInShop } from "../index.js";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { JOB, smallServer } from "./server.test-helper.js";

test("entered, counted, taken back", async () => {
	const { ask, data } = await smallServer();
	const evidence = { occasions: [{ codes: ["B1A02"] }] };
	const find = async () => (await ask("POST", `${JOB}/find`, evidence)).body;
	const before = await find();
	const { id, kind, where, singles } = before.faults[1];
	const body = { fault: id, kind, where, steps: singles[0].steps, worked: "" };
	const sent = { person: "Kim", kind: "repair", body };
	expect((await ask("POST", `${JOB}/entries`, { ...sent, body: { ...body, steps: ["nine"] } })).status).toBe(
		422,
	);
	const { status, body: entry } = await ask("POST", `${JOB}/entries`, sent);
	expect(status).toBe(201);
	const counted = (await ask("GET", "/api/v1/repairs")).body;
	expect(counted).toMatchObject({
		cars: 1,
		repairs: [{ entry: entry.id, fault: id, person: "Kim", takenBack: "" }],
	});
	expect((await knownInShop(data)).record).toMatchObject({ cars: 1, repairs: [{ kind }] });
	const chance = (found: typeof before) =>
		found.faults.find((fault: { id: string }) => fault.id === id).posterior;
	expect(chance(await find())).toBeGreaterThan(1.2 * chance(before));
	const back = { person: "Kim", kind: "correction", body: { of: entry.id, text: "it was another" } };
	expect((await ask("POST", `${JOB}/entries`, back)).status).toBe(201);
	expect((await ask("GET", "/api/v1/repairs")).body).toMatchObject({ cars: 0, repairs: [{ kind }] });
	expect(await find()).toEqual(before);
});

test("where there is no shop, it is said", async () => {
	await expect(knownInShop(temporaryFolder())).rejects.toThrow("there is no shop's database here");
});
