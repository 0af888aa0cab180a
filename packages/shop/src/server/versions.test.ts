import { expect, test } from "vitest";
import { shopOfTest } from "./access/tablet.test-helper.js";

interface Row {
	readonly kind: string;
	readonly key: string;
	readonly cells: readonly { readonly column: string; readonly was: string; readonly is: string }[];
}

async function changedTwice() {
	const { job, store, tablet } = await shopOfTest();
	const { ask } = tablet();
	const at = `/api/v1/jobs/${job}`;
	const first: string = (await ask("GET", at)).body.tables["recipe.csv"];
	const shorter = first.replace(/^7,tie to ground.*\n?/m, "");
	const later = shorter.replace("W10a,300 mm", "W10a,350 mm");
	const put = (person: string, tables: object) => ask("PUT", `${at}/tables`, { tables, person });
	await put("Kim", { "recipe.csv": shorter });
	const { wires } = { wires: (await ask("GET", at)).body.tables["wires.csv"] };
	await put("Kim", { "wires.csv": wires.replace("1.2 m", "1.7 m") });
	await put("Lee", { "recipe.csv": later, "targets.csv": "target,from,to,size\nearth,E-R.2,ground,1\n" });
	return { at, ask, put, store, job, first, shorter, later };
}

test("each version says who brought it when, and can be read; what stands now is the last", async () => {
	const { at, ask, first, shorter, later } = await changedTwice();
	const { versions } = (await ask("GET", `${at}/recipe/versions`)).body;
	expect(versions).toMatchObject([
		{ version: 1, person: "", entry: "", changed: [], kept: true },
		{ version: 2, person: "Kim", changed: ["recipe.csv"], kept: true },
		{ version: 3, person: "Lee", changed: ["recipe.csv", "targets.csv"], kept: true },
	]);
	const text = async (version: number) =>
		(await ask("GET", `${at}/recipe/versions/${version}`)).body.tables["recipe.csv"];
	expect([await text(1), await text(2), await text(3)]).toEqual([first, shorter, later]);
	const whole = (await ask("GET", `${at}/recipe/versions/1`)).body.tables;
	expect(Object.keys(whole).sort()).toEqual([
		"new-contacts.csv",
		"new-joints.csv",
		"new-parts.csv",
		"recipe.csv",
	]);
	const { entry, time } = versions[2];
	const job = (await ask("GET", at)).body;
	expect(job.recipe).toEqual({ version: 3, person: "Lee", time });
	const { entries } = (await ask("GET", `${at}/entries`)).body;
	expect(job.replaced).toBe(entries.at(-1).place);
	expect(entries.find(({ id }: { id: string }) => id === entry)).toMatchObject({ kind: "tables", time });
});

test("two versions held against each other: rows, the loom, minutes", async () => {
	const { at, ask } = await changedTwice();
	const { body } = await ask("GET", `${at}/recipe/versions/3/changes?since=1`);
	const rows = (name: string): Row[] =>
		body.tables.find((table: { name: string }) => table.name === name).rows;
	expect(rows("recipe.csv").map(({ kind, key }) => [kind, key])).toEqual([
		["changed", "2"],
		["gone", "7"],
	]);
	expect(rows("recipe.csv")[0]?.cells).toEqual([{ column: "at", was: "300 mm", is: "350 mm" }]);
	expect(rows("targets.csv").map(({ kind }) => kind)).toEqual(["added"]);
	expect(body.tables.map((table: { name: string }) => table.name)).not.toContain("wires.csv");
	// demo/small/recipe.csv: step 7 takes 6 minutes and leads the right lamp to its own ground.
	expect(body.minutes.before - body.minutes.after).toBe(6);
	expect(body.changes.map((change: { contact: string }) => change.contact)).toContain("E-R.2");
	const same = (await ask("GET", `${at}/recipe/versions/2/changes?since=2`)).body;
	expect([same.tables, same.changes]).toEqual([[], []]);
});

test("an earlier version taken again is a new one with the old text; a table that came meanwhile goes", async () => {
	const { at, ask, put, first } = await changedTwice();
	await put("Ola", { "recipe.csv": first, "targets.csv": null });
	const { tables, version } = (await ask("GET", `${at}/recipe/versions/4`)).body;
	expect([version, tables["recipe.csv"], tables["targets.csv"]]).toEqual([4, first, undefined]);
	const { body } = await ask("GET", `${at}/recipe/versions/4/changes?since=1`);
	expect([body.tables, body.changes]).toEqual([[], []]);
});

test("no such version, and none of a job that is not there", async () => {
	const { at, ask } = await changedTwice();
	for (const path of [`${at}/recipe/versions/9`, `${at}/recipe/versions/9/changes?since=1`]) {
		const { status, body } = await ask("GET", path);
		expect([status, body.error]).toEqual([404, "there is no version 9 of this recipe"]);
	}
	expect((await ask("GET", `${at}/recipe/versions/first`)).status).toBe(400);
	expect((await ask("GET", "/api/v1/jobs/nobody/recipe/versions")).status).toBe(404);
});
