import { analyse, factor, solveChecked } from "@loomwright/linalg";
import { expect, test } from "vitest";
import type { Figure } from "../figure.js";
import { compare, slope } from "./compare.js";
import { fullMatrix, loomNetwork, seeded } from "./network-generator.js";

test("a network has the size asked for, is the same for the same seed, and another for another", () => {
	for (const n of [8, 61, 500]) {
		const a = loomNetwork(n, 1);
		expect(a.n).toBe(n);
		expect(a.rowSums).toHaveLength(n);
		expect(loomNetwork(n, 1)).toEqual(a);
		expect(loomNetwork(n, 2).siemens).not.toEqual(a.siemens);
	}
	expect(() => loomNetwork(7, 1)).toThrow("a network needs a whole number >= 8 of nodes, got 7");
});

test("networks are nearly trees with hubs, span twelve decades and hold together", () => {
	const { n, from, siemens, pattern, values, rowSums } = loomNetwork(2000, 3);
	expect(from.length).toBeLessThan(1.2 * n);
	expect(Math.max(...siemens) / Math.min(...siemens)).toBeGreaterThanOrEqual(1e11);
	const degree = new Int32Array(n);
	for (let j = 0; j < n; j++) {
		for (let s = pattern.colPtr[j] as number; s < (pattern.colPtr[j + 1] as number); s++) {
			const i = pattern.rowIdx[s] as number;
			if (i !== j) for (const k of [i, j]) degree[k] = (degree[k] as number) + 1;
		}
	}
	expect(Math.max(...degree)).toBeGreaterThan(20);
	expect([...degree].sort((a, b) => a - b)[n >> 1]).toBe(2);
	const result = factor(analyse(n, pattern.colPtr, pattern.rowIdx), values, rowSums);
	if (!result.ok) throw new Error(result.reason);
	expect(solveChecked(result.numeric, new Float64Array(n).fill(1)).ok).toBe(true);
});

test("the full matrix is symmetric with ascending rows and the network's row sums", () => {
	const network = loomNetwork(100, 5);
	const { colPtr, rowIdx, values } = fullMatrix(network);
	const at = new Map<string, number>();
	for (let j = 0; j < 100; j++) {
		let sum = 0;
		for (let p = colPtr[j] as number; p < (colPtr[j + 1] as number); p++) {
			if (p > (colPtr[j] as number)) expect(rowIdx[p]).toBeGreaterThan(rowIdx[p - 1] as number);
			at.set(`${rowIdx[p]},${j}`, values[p] as number);
			sum += values[p] as number;
		}
		expect(sum).toBeCloseTo(network.rowSums[j] as number, 8);
	}
	for (const [key, v] of at) expect(at.get(key.split(",").reverse().join(","))).toBe(v);
});

test("the seeded generator is uniform enough and repeatable", () => {
	const random = seeded(1);
	const draws = Array.from({ length: 10000 }, random);
	expect(draws.every((v) => v >= 0 && v < 1)).toBe(true);
	expect(Math.abs(draws.reduce((s, v) => s + v, 0) / 10000 - 0.5)).toBeLessThan(0.02);
	const again = seeded(1);
	expect(draws.slice(0, 5)).toEqual(Array.from({ length: 5 }, again));
});

test("the slope of a power law is its exponent", () => {
	expect(slope([1, 10, 100].map((n) => [n, 3 * n ** 1.25] as const))).toBeCloseTo(1.25, 12);
});

test("a small comparison runs through, with or without KLU", async () => {
	const notes: string[] = [];
	const figures: Figure[] = [];
	const options = { rounds: 1, seconds: 0.01, note: (l: string) => notes.push(l) };
	const networks = [60, 120].map((nodes) => () => loomNetwork(nodes, 7));
	for await (const figure of compare(networks, 0, options)) figures.push(figure);
	const names = figures.map(({ figure }) => figure);
	for (const name of ["60 nodes: factor + solve", "120 nodes: solve", "60 nodes: dense LU of ml-matrix"]) {
		expect(names).toContain(name);
	}
	for (const { figure, value } of figures) expect(Number.isFinite(value), figure).toBe(true);
	if (notes.length > 0) expect(notes[0]).toMatch(/^KLU comparison skipped: .*libsuitesparse-dev/);
	expect(names.includes("60 nodes: factor + solve, times KLU's")).toBe(notes.length === 0);
});
