import { expect, test } from "vitest";
import { applyRecipe } from "../apply.js";
import { after, bench, joint, newParts, recipe, step } from "../bench.test-helper.js";
import type { Change } from "./change.js";
import { compareLooms } from "./compare.js";

const cutW1 = step("cut", { wire: "W1", at: { metres: 1 } });
const extendW1 = step("extend", { wire: "W1", to: "E1.3", fresh: "W1X", joint: "S9", metres: 1.5 });

const lines = (changes: readonly Change[]) =>
	changes.map(({ connector, cavity, contact, part, joint: at, wire, kind }) =>
		[connector, cavity, contact || part || at || wire, kind].filter((word) => word !== "").join(" "),
	);

const changes = (...steps: Parameters<typeof after>) => compareLooms(bench, after(...steps).loom);

test("a recipe of nothing is no change", () => {
	expect(changes()).toEqual([]);
});

test("a cut wire ends loose at both contacts, with what was and what is", () => {
	const found = changes(cutW1);
	expect(lines(found)).toEqual(["C1 1 E1.1 now ends loose", "C2 1 T1.1 now ends loose"]);
	expect(found.map((change) => change.text)).toEqual([
		"E1.1: was W1 (BKWH 0.75 mm2, 2 m) to T1.1, now W1 (BKWH 0.75 mm2, 1 m) to a bare end",
		"T1.1: was W1 (BKWH 0.75 mm2, 2 m) to E1.1, now W1+b (BKWH 0.75 mm2, 1 m) to a bare end",
	]);
	expect(found[1]).toMatchObject({
		wire: "W1+b",
		before: { wire: { id: "W1" } },
		after: { far: { at: "loose" } },
	});
});

test("an extension is a splice at the kept end and a new wire at the new one", () => {
	const found = changes(cutW1, extendW1, step("isolate and stow", { wire: "W1+b" }));
	expect(lines(found)).toEqual([
		"C1 1 E1.1 spliced",
		"C1 3 E1.3 wire added",
		"C2 1 T1.1 now ends loose",
		"S9 joint added",
	]);
	expect(found[0]?.text).toContain("now W1 (BKWH 0.75 mm2, 1 m) by splice S9 to E1.3");
	expect(found[0]?.after?.reaches).toEqual([{ place: "E1.3", loose: false, metres: 2.5, splices: ["S9"] }]);
	expect(found[2]?.text).toContain("to a stowed end");
});

test("cut and extended back to the same contact is lengthened", () => {
	const found = changes(
		cutW1,
		step("cut", { wire: "W1+b", at: "to" }),
		step("extend", { wire: "W1", to: "T1.1", fresh: "W1X", joint: "S9", metres: 1.5 }),
	);
	expect(lines(found)).toEqual([
		"C1 1 E1.1 wire lengthened",
		"C2 1 T1.1 wire lengthened",
		"S9 joint added",
		"W1+b wire added",
	]);
});

test("a moved terminal is listed at both cavities and where the wire comes from", () => {
	expect(lines(changes(step("move terminal", { from: "T1.1", to: "E1.10" })))).toEqual([
		"C1 1 E1.1 leads elsewhere",
		"C1 10 E1.10 wire moved",
		"C2 1 T1.1 wire moved",
	]);
});

test("a wire that came or went tells where that end is or was", () => {
	const found = changes(step("move terminal", { from: "T1.1", to: "E1.10" }));
	expect(found.slice(1).map((change) => change.text)).toEqual([
		"E1.10: now W1 (BKWH 0.75 mm2, 2 m) to E1.1; that end was at T1.1",
		"T1.1: no longer W1 (BKWH 0.75 mm2, 2 m) to E1.1; that end is at E1.10",
	]);
	const [, off] = changes(step("cut", { wire: "W1", at: "to" }));
	expect(off?.text).toBe("T1.1: no longer W1 (BKWH 0.75 mm2, 2 m) to E1.1; that end is a bare end");
});

test("which end a table calls from does not matter to where an end went", () => {
	const { loom } = after(step("cut", { wire: "W1", at: "to" }));
	const { from, to, ...rest } = loom.wires.get("W1")!;
	const turned = { ...loom, wires: new Map([...loom.wires, ["W1", { ...rest, from: to, to: from }]]) };
	expect(lines(compareLooms(bench, turned))).toEqual([
		"C1 1 E1.1 now ends loose",
		"C2 1 T1.1 wire taken off",
	]);
});

test("a part taken out: its cavities lose their wires, the far ends are loose", () => {
	expect(lines(changes(step("remove part", { part: "K1" })))).toEqual([
		// W2 and W3 went on to the relay by splice S1
		"C1 2 E1.2 differs beyond a splice",
		"C2 2 T1.2 differs beyond a splice",
		"K1 K1 part removed",
		"K1 K1.85 wire taken off",
	]);
});

test("a tap, a ground wire, a part fitted and a loose end fitted", () => {
	const found = changes(
		step("join", { wire: "W6", other: "W1", at: { metres: 0.5 }, joint: "S5" }),
		step("tie to ground", { from: "E1.3", to: "G1", fresh: "N1", mm2: 1, metres: 0.4 }),
		step("fit part", { part: "C9" }),
		step("fit part", { part: "S9" }),
	);
	expect(lines(found)).toEqual([
		"C1 1 E1.1 spliced",
		"C1 3 E1.3 wire added",
		"C2 1 T1.1 spliced",
		"C9 C9 part fitted",
		"BAT.+ now connected",
		"S9 part fitted",
		"G1 joint rewired",
		"S5 joint added",
	]);
});

test("the mirror of a recipe: what was removed is added, what was fitted is removed", () => {
	const steps = [step("remove part", { part: "T1" }), step("cut", { wire: "W1", at: "from" })];
	const { loom } = after(...steps);
	expect(lines(compareLooms(loom, bench))).toEqual([
		"C1 1 E1.1 loose end fitted",
		"C1 2 E1.2 differs beyond a splice",
		"C2 1 T1.1 loose end fitted",
		"C2 2 T1.2 loose end fitted",
		"K1 K1.85 differs beyond a splice",
		"T1 part fitted",
	]);
});

test("wires that no contact holds are listed by themselves", () => {
	const found = changes(step("isolate and stow", { wire: "W7" }));
	expect(lines(found)).toEqual(["W7 now stowed"]);
	expect(found[0]?.text).toContain("to a stowed end from a bare end, now W7");
});

test("any field of a part, contact, wire or joint counts", () => {
	const changed = <T>(table: ReadonlyMap<string, T>, id: string, more: Partial<T>) =>
		new Map([...table, [id, { ...table.get(id)!, ...more }]]);
	const looms: [string[], typeof bench][] = [
		[["K1 K1 part changed"], { ...bench, parts: changed(bench.parts, "K1", { values: { coil_ohms: 90 } }) }],
		[
			["C1 1 E1.1 contact changed"],
			{ ...bench, contacts: changed(bench.contacts, "E1.1", { role: "supply" }) },
		],
		[
			["C1 1 E1.1 wire changed", "C2 1 T1.1 wire changed"],
			{ ...bench, wires: changed(bench.wires, "W1", { mm2: 1 }) },
		],
		[
			["C1 1 E1.1 wire shortened", "C2 1 T1.1 wire shortened"],
			{ ...bench, wires: changed(bench.wires, "W1", { metres: 1 }) },
		],
		[["S1 joint changed"], { ...bench, joints: changed(bench.joints, "S1", { ohms: 0.01 }) }],
		[
			["S8 joint added"],
			{ ...bench, joints: changed(new Map([...bench.joints, ["S8", joint("S8")]]), "S8", {}) },
		],
	];
	for (const [kinds, loom] of looms) expect(lines(compareLooms(bench, loom))).toEqual(kinds);
});

test("splices in a loop are followed once, the shorter way", () => {
	const { loom } = applyRecipe(
		bench,
		recipe(
			step("fit part", { part: "S8" }),
			step("add wire", { fresh: "N1", from: "S1", to: "S8", mm2: 1, metres: 0.3 }),
			step("add wire", { fresh: "N2", from: "S8", to: "S1", mm2: 1, metres: 0.2 }),
			step("add wire", { fresh: "N3", from: "S8", to: "G1", mm2: 1, metres: 0.4 }),
		),
		{ ...newParts, joints: new Map([["S8", joint("S8")]]) },
	);
	const atE12 = compareLooms(bench, loom).find((change) => change.contact === "E1.2");
	expect(atE12?.after?.reaches.map(({ place, metres }) => [place, metres])).toEqual([
		["G1", 2 + 0.2 + 0.4],
		["K1.85", 4],
		["T1.2", 4],
	]);
});
