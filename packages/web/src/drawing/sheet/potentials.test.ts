import fc from "fast-check";
import { expect, test } from "vitest";
import { type Edge, potentials } from "./potentials.js";

const edge = (a: string, b: string, conductance: number): Edge => ({ a, b, conductance });

test("a divider by hand: 1 and 3 siemens in series from 1 to 0 meet at 1/4", () => {
	const found = potentials(
		["top", "mid", "bottom"],
		[edge("top", "mid", 1), edge("mid", "bottom", 3)],
		new Map([
			["top", 1],
			["bottom", 0],
		]),
		1e-12,
	);
	expect(found.get("mid")).toBeCloseTo(0.25, 9);
});

test("a star with many branches settles too, and a dead end falls away from its supply", () => {
	const ends = Array.from({ length: 40 }, (_, k) => `e${k}`);
	const edges = [edge("top", "star", 1), ...ends.map((end) => edge("star", end, 8)), edge("e0", "bottom", 1)];
	const found = potentials(
		["top", "star", "bottom", ...ends],
		edges,
		new Map([
			["top", 1],
			["bottom", 0],
		]),
		1e-3,
	);
	expect(found.get("star")!).toBeGreaterThan(found.get("e1")!);
	expect(found.get("e1")!).toBeGreaterThan(found.get("e0")!);
});

test("currents add up to nothing at every point that is not held", () => {
	const name = fc.integer({ min: 0, max: 9 }).map(String);
	const anyEdge = fc
		.tuple(name, name, fc.double({ min: 0.1, max: 10, noNaN: true }))
		.filter(([a, b]) => a !== b)
		.map(([a, b, g]) => edge(a, b, g));
	fc.assert(
		fc.property(fc.array(anyEdge, { maxLength: 25 }), (edges) => {
			const held = new Map([
				["0", 1],
				["1", 0],
			]);
			const names = Array.from({ length: 10 }, (_, k) => String(k));
			const v = potentials(names, edges, held, 0.01);
			for (const at of names.filter((n) => !held.has(n))) {
				const sum = edges.reduce((s, { a, b, conductance }) => {
					const other = a === at ? b : b === at ? a : undefined;
					return other === undefined ? s : s + conductance * (v.get(at)! - v.get(other)!);
				}, 0.01 * v.get(at)!);
				expect(Math.abs(sum)).toBeLessThan(1e-6);
			}
		}),
		{ seed: 11, numRuns: 200 },
	);
});
