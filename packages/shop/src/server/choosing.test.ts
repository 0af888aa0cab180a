import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { shopOfTest } from "./access/tablet.test-helper.js";
import { SMALL_CAR } from "./server.test-helper.js";

const targets = `target,want,title,part,from,to,size,joints
k1,remove,the lamp relay goes,K1,,,,
s-wrk,fit,a switch takes its place,S-WRK,,,,
feed,,feed of the switch,,S-WRK.1,permanent feed,1.5,
lamps,,work lamps by the switch,,S-WRK.2,function work-lamps,1.5,1
`;
const wires = readFileSync(join(SMALL_CAR, "wires.csv"), "utf8");

async function asked() {
	const { job, store, tablet } = await shopOfTest();
	const { ask } = tablet();
	const at = `/api/v1/jobs/${job}`;
	return { at, store, ask, put: (tables: object) => ask("PUT", `${at}/tables`, { tables, person: "Kim" }) };
}

test("a target is taken in, the least-cost recipe is proposed, taken over and fits", async () => {
	const { at, ask, put } = await asked();
	const none = await ask("POST", `${at}/plan`);
	expect([none.status, none.body.errors[0].file]).toEqual([422, "targets.csv"]);
	expect((await put({ "targets.csv": targets })).status).toBe(200);
	const { body: plan } = await ask("POST", `${at}/plan`, {});
	expect(plan).toMatchObject({ possible: true, gap: 0, way: "work on the loom", misfits: [] });
	// docs/plan.md, the small example.
	expect(
		plan.choices.map((choice: { circuit: string; way: string }) => [choice.circuit, choice.way]),
	).toEqual([
		["feed", "extend"],
		["lamps", "extend"],
	]);
	expect(plan.choices[0].second.moreMinutes).toBeGreaterThan(0);
	expect((await ask("POST", `${at}/plan`, {})).body).toEqual(plan);
	const taken = await put(plan.files);
	expect([taken.status, taken.body.misfits]).toEqual([200, 0]);
	expect((await ask("GET", at)).body.tables["recipe.csv"]).toBe(plan.files["recipe.csv"]);
});

// One shop for all three: its computing thread starts once.
test("sizes; what a change would do; the recipe on another car", async () => {
	const shop = await asked();
	await sizes(shop);
	await whatIf(shop);
	await transfer(shop);
});

type Shop = Awaited<ReturnType<typeof asked>>;

/** Each figure has its source. */
async function sizes({ at, ask }: Shop): Promise<void> {
	const { status, body } = await ask("GET", `${at}/sizes?of=delivered`);
	expect([status, body.of, body.misfits]).toEqual([200, "delivered", []]);
	expect(body.wires.length).toBe(wires.trimEnd().split("\n").length - 1);
	const figures = body.wires.flatMap((wire: { ends: { stripMm: unknown }[] }) =>
		wire.ends.map((end) => end.stripMm),
	);
	for (const figure of figures.filter(Boolean)) expect(figure.source).toMatch(/^reference\/.*\.csv \d+$/);
}

/** A thin wire; a step left out; a cell that is not there; nothing is stored. */
async function whatIf({ at, ask }: Shop): Promise<void> {
	const before = (await ask("GET", at)).body.tables;
	const cell = { table: "wires", row: "W2", column: "size", cell: "0.35" };
	const { body } = await ask("POST", `${at}/what-if`, { change: cell });
	expect(body.wires.find((wire: { id: string }) => wire.id === "W2")).toMatchObject({ after: { mm2: 0.35 } });
	const step = before["recipe.csv"].split("\n")[1].split(",")[0];
	const without = await ask("POST", `${at}/what-if`, { of: "converted", change: { without: step } });
	expect([without.status, without.body.of]).toEqual([200, "converted"]);
	const wrong = await ask("POST", `${at}/what-if`, { change: { ...cell, row: "W999" } });
	expect([wrong.status, wrong.body.errors[0]]).toEqual([422, expect.objectContaining({ file: "wires.csv" })]);
	expect((await ask("GET", at)).body.tables).toEqual(before);
}

/** On a car whose wire of the lamp is another, some step does not simply apply. */
async function transfer({ at, ask, store }: Shop): Promise<void> {
	const { tables } = (await ask("GET", at)).body;
	const same = await store.addJob({ title: "Same", source: "", tables, practice: {} });
	const other = { ...tables, "wires.csv": wires.replace(/^(W14,.*?),1,/m, "$1,0.5,") };
	expect(other["wires.csv"]).not.toBe(wires);
	const thin = await store.addJob({ title: "Thin", source: "", tables: other, practice: {} });
	const to = async (id: string) => (await ask("POST", `${at}/transfer`, { to: id })).body;
	expect((await to(same.id)).counts).toMatchObject({ decide: 0, "not here": 0 });
	const found = await to(thin.id);
	expect(found.differences.length).toBeGreaterThan(0);
	expect(found.steps.flatMap((step: { reasons: { kind: string }[] }) => step.reasons)).toContainEqual(
		expect.objectContaining({ kind: "size", is: "0.5 mm2" }),
	);
	const draft = await ask("PUT", `/api/v1/jobs/${thin.id}/tables`, { tables: found.files, person: "Kim" });
	expect([draft.status, draft.body.misfits]).toEqual([200, 0]);
	expect((await ask("POST", `${at}/transfer`, { to: "nobody" })).status).toBe(404);
}

test("a trial says what would change, or every error by file, row and column; nothing is stored", async () => {
	const { at, ask } = await asked();
	const before = (await ask("GET", at)).body.tables;
	const trial = (tables: object) => ask("POST", `${at}/tables/trial`, { tables });
	const wrong = targets.replace("S-WRK,,,,", "S-WRX,,,,").replace("permanent feed,1.5", "permanent fed,");
	const refused = await trial({ "targets.csv": wrong, "recipe.csv": before["recipe.csv"] });
	expect(refused.status).toBe(422);
	expect(refused.body.errors).toMatchObject([
		{ file: "targets.csv", row: 3, column: "part" },
		{ file: "targets.csv", row: 4, column: "size" },
		{ file: "targets.csv", row: 4, column: "to" },
	]);
	const costs = await trial({ "costs.csv": "item,price\nhour,80\nhuor,80\n" });
	expect(costs.body.errors).toMatchObject([{ file: "costs.csv", row: 3, column: "item" }]);
	const steps = before["recipe.csv"].replace(/W(\d+)/, "W9$1");
	const misfit = await trial({ "recipe.csv": steps });
	expect(misfit.status).toBe(200);
	expect(misfit.body.tables[0].rows).toMatchObject([{ kind: "changed" }]);
	expect(misfit.body.misfits.length).toBeGreaterThan(0);
	expect((await trial({ "targets.csv": targets })).body.tables[0].rows).toHaveLength(4);
	expect((await ask("GET", at)).body.tables).toEqual(before);
});

test("a table goes; one the car cannot be opened without does not", async () => {
	const { at, ask, put } = await asked();
	await put({ "targets.csv": targets });
	expect((await put({ "targets.csv": null })).body.changed).toEqual(["targets.csv"]);
	expect((await ask("GET", at)).body.tables).not.toHaveProperty("targets.csv");
	expect((await put({ "wires.csv": null })).status).toBe(422);
});
