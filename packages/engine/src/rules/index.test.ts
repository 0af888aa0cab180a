import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { openCar } from "../car.js";
import { Circuit } from "../circuit/index.js";
import type { Loom, Wire, WireEnd } from "../loom/index.js";
import { rules, runRules } from "./index.js";
import { benchCircuit } from "./support/bench-loom.test-helper.js";

function demo(name: string): Record<string, string> {
	const folder = new URL(`../../../../demo/${name}/`, import.meta.url);
	const names = readdirSync(folder).filter((file) => file.endsWith(".csv"));
	return Object.fromEntries(names.map((file) => [file, readFileSync(new URL(file, folder), "utf8")]));
}

test("each rule has its own id, a title and a source", () => {
	expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
	for (const rule of rules) expect(rule.title.length * rule.source.length).toBeGreaterThan(0);
});

test("docs/rules.md names every rule and no other", () => {
	const text = readFileSync(new URL("../../../../docs/rules.md", import.meta.url), "utf8");
	const named = [...text.matchAll(/^\| `([a-z-]+)` \|/gm)].map(([, id]) => id);
	expect(named).toEqual(rules.map((rule) => rule.id));
});

test.each(["small", "main"])("the %s demo car is sound before and after its conversion", (name) => {
	const car = openCar(demo(name));
	for (const which of ["delivered", "converted"] as const) {
		const found = runRules(car.circuit(which), which === "converted" ? car.circuit("delivered") : undefined);
		expect(found.filter((finding) => finding.severity !== "note")).toEqual([]);
	}
});

const spoken = new Map<string, readonly string[]>();

/** The rules that speak when the step that makes this wire is left out of the demo car's recipe; found once. */
function withoutStep(made: string): readonly string[] {
	const known = spoken.get(made);
	if (known) return known;
	const files = demo("main");
	const rows = files["recipe.csv"]!.split("\n");
	const kept = rows.filter((row) => !row.split(",").includes(made));
	expect(kept).toHaveLength(rows.length - 1);
	const car = openCar({ ...files, "recipe.csv": kept.join("\n") });
	const found = runRules(car.circuit("converted"), car.circuit("delivered")).map((finding) => finding.rule);
	spoken.set(made, found);
	return found;
}

test.each([
	["N10", "the tie of the sensor returns", "sensor-return"],
	["N01", "the key side of the clutch switch", "start-interlock"],
	["N07", "the reversing lamp lead", "reversing-lamps"],
	["N12", "the bus end's low line", "bus-ends"],
	["N05", "the ground of the clutch signal", "switch-input"],
	["N04", "the clutch signal to the engine unit", "dead-end-wire"],
	["N10", "the tie of the sensor returns", "needs-removed-part"],
	["N07", "the reversing lamp lead", "function-lost"],
])("%s left out, %s: %s speaks", (made, _what, rule) => {
	expect(withoutStep(made)).toContain(rule);
});

test("an empty loom has no findings", () => {
	expect(runRules(benchCircuit({ parts: [], wires: [] }))).toEqual([]);
});

test("findings come gravest first, alike each time, whatever the wires; no rule fails on a broken loom", () => {
	const { converted } = openCar(demo("small"));
	const places: WireEnd[] = [
		{ at: "loose", insulated: false },
		{ at: "loose", insulated: true },
		...[...converted.contacts.keys()].map((contact): WireEnd => ({ at: "contact", contact })),
		...[...converted.joints.keys()].map((joint): WireEnd => ({ at: "joint", joint })),
	];
	const move = fc.record({
		wire: fc.constantFrom(...converted.wires.keys()),
		side: fc.constantFrom("from" as const, "to" as const),
		place: fc.constantFrom(...places),
	});
	const order = ["stop", "warn", "note"];
	fc.assert(
		fc.property(fc.array(move, { minLength: 1, maxLength: 6 }), (moves) => {
			const wires = new Map<string, Wire>(converted.wires);
			for (const { wire, side, place } of moves) wires.set(wire, { ...wires.get(wire)!, [side]: place });
			const loom: Loom = { ...converted, wires };
			const found = runRules(new Circuit(loom), new Circuit(converted));
			const ranks = found.map((finding) => order.indexOf(finding.severity));
			expect(ranks).toEqual([...ranks].sort());
			for (const { where, why, mend, path } of found) {
				expect(Math.min(where.length, why.length, mend.length, path.length)).toBeGreaterThan(0);
				expect(`${where} ${why} ${mend}`).not.toMatch(/undefined|NaN|null/);
				for (const id of path)
					expect([loom.parts, loom.contacts, loom.wires, loom.joints].some((table) => table.has(id))).toBe(
						true,
					);
			}
			expect(runRules(new Circuit(loom), new Circuit(converted))).toEqual(found);
		}),
		{ seed: 72552, numRuns: 60 },
	);
});
