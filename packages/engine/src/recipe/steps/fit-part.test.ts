import { expect, test } from "vitest";
import { applyRecipe } from "../apply.js";
import { after, bench, contact, newParts, part, recipe, refused, step } from "../bench.test-helper.js";

const fitC9 = step("fit part", { part: "C9" });

test("the part comes with its contacts", () => {
	const { loom, misfits, touched } = after(fitC9, step("fit part", { part: "S9" }));
	expect(misfits).toEqual([]);
	expect(loom.parts.get("S9")).toBe(newParts.parts.get("S9"));
	expect([...loom.contacts.keys()].slice(-2)).toEqual(["S9.a", "S9.b"]);
	expect(touched.parts.get("S9")).toEqual(["2"]);
	expect(touched.contacts.get("S9.b")).toEqual(["2"]);
	expect(touched.connectors.get("C9")).toEqual(["2"]);
});

test("a joint", () => {
	const { loom, misfits } = after(step("fit part", { part: "G9" }));
	expect(misfits).toEqual([]);
	expect(loom.joints.get("G9")).toBe(newParts.joints.get("G9"));
});

test("a part can take the place of one that came out", () => {
	const other = { ...newParts, parts: new Map([["T1", part("T1", "module")]]), contacts: new Map() };
	const steps = recipe(step("remove part", { part: "T1" }), step("fit part", { part: "T1" }));
	const { loom, misfits } = applyRecipe(bench, steps, other);
	expect(misfits).toEqual([]);
	expect(loom.parts.get("T1")?.kind).toBe("module");
});

test("misfits", () => {
	expect(refused(step("fit part"))).toHaveLength(1);
	expect(refused(step("fit part", { part: "Q" }))[0]).toContain("Q is not among the new parts");
	expect(refused(step("fit part", { part: "S9" }))[0]).toContain(
		"its connector C9 is not in the car; fit C9",
	);
	expect(refused(fitC9, fitC9)[0]).toContain("C9 is in the car already");
	const clash = { ...newParts, contacts: new Map([["E1.1", { ...contact("E1.1"), part: "S9" }]]) };
	const { misfits } = applyRecipe(bench, recipe(step("fit part", { part: "S9" })), clash);
	expect(misfits.map((found) => found.problem)).toEqual(["its contact E1.1 is in the car already"]);
	const taken = { ...newParts, contacts: new Map([["S9.a", contact("S9.a", "C2", "1")]]) };
	expect(
		applyRecipe(bench, recipe(step("fit part", { part: "S9" })), taken).misfits.map((m) => m.text),
	).toEqual([
		"step 1 'fit part': part: its contact S9.a: cavity 1 of C2 already holds T1.1; give it a cavity of its own in new-contacts.csv",
	]);
});

test("the cavity of a part that came out is free for the new one", () => {
	const taken = { ...newParts, contacts: new Map([["S9.a", contact("S9.a", "C2", "1")]]) };
	const steps = recipe(step("remove part", { part: "T1" }), step("fit part", { part: "S9" }));
	expect(applyRecipe(bench, steps, taken).misfits).toEqual([]);
});
