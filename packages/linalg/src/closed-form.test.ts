/**
 * Effective resistances with a closed form, from reference/electrical/resistor-networks.csv (sources in its rows).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { assemble } from "./random-network.test-helper.js";
import { factor } from "./symmetric/factor.js";
import { selectedInverse } from "./symmetric/selected-inverse.js";
import { solveSparseAt } from "./symmetric/solve-sparse.js";
import { analyse } from "./symmetric/symbolic.js";

interface Row {
	id: string;
	network: string;
	pair: string;
	exact: string;
	value: number;
	edges: [number, number, number][];
}

/** Rows of the table; fields may be quoted. */
function readRows(): Row[] {
	const text = readFileSync(
		new URL("../../../reference/electrical/resistor-networks.csv", import.meta.url),
		"utf8",
	);
	return text
		.trim()
		.split("\n")
		.slice(1)
		.map((line) => {
			const fields = [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map((m) => m[1] ?? m[2]);
			return {
				id: fields[0],
				network: fields[1],
				pair: fields[2],
				exact: fields[3],
				value: Number(fields[4]),
				edges: fields[5]
					.split(" ")
					.filter((e) => e !== "")
					.map((e) => e.split(/[-:]/).map(Number) as [number, number, number]),
			};
		});
}

/** Resistance between u and v, by injecting one ampere into u with v as the reference. */
function resistance(edges: [number, number, number][], u: number, v: number): number {
	const n = 1 + Math.max(...edges.map(([a, b]) => Math.max(a, b)));
	const rank = (i: number) => (i === v ? -1 : i > v ? i - 1 : i); // node v has no unknown
	const net = assemble(
		n - 1,
		edges.map(([a, b]) => Math.max(rank(a), rank(b))),
		edges.map(([a, b]) => Math.min(rank(a), rank(b))),
		edges.map(([, , ohms]) => 1 / ohms),
	);
	const result = factor(analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums);
	if (!result.ok) throw new Error(result.reason);
	return solveSparseAt(result.numeric, [rank(u)], [1], [rank(u)])[0];
}

/** Sum over the edges of R_eff / R, node 0 as the reference. */
function fosterSum(edges: [number, number, number][]): number {
	const n = Math.max(...edges.map(([a, b]) => Math.max(a, b)));
	const net = assemble(
		n,
		edges.map(([a, b]) => Math.max(a, b) - 1),
		edges.map(([a, b]) => Math.min(a, b) - 1),
		edges.map(([, , ohms]) => 1 / ohms),
	);
	const result = factor(analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums);
	if (!result.ok) throw new Error(result.reason);
	const z = selectedInverse(result.numeric);
	let sum = 0;
	for (let e = 0; e < edges.length; e++) {
		const u = net.from[e];
		const v = net.to[e];
		sum += net.siemens[e] * (v < 0 ? z.at(u, u) : z.at(u, u) + z.at(v, v) - 2 * z.at(u, v));
	}
	return sum;
}

/** The two nodes a row speaks of. */
function pairOf({ network, pair, edges }: Row): [number, number] {
	const n = 1 + Math.max(...edges.map(([a, b]) => Math.max(a, b)));
	const explicit = /^(\d+)(?: to |-)(\d+)/.exec(pair);
	if (explicit) return [Number(explicit[1]), Number(explicit[2])];
	const apart = /^(\d+) apart$/.exec(pair);
	if (apart) return [0, Number(apart[1])];
	switch (pair) {
		case "any pair":
		case "both on the m side":
		case "hub to rim":
		case "adjacent at a corner":
			return [0, 1];
		case "across":
			return [0, Number(/K(\d+),/.exec(network)?.[1])];
		case "opposite corners":
			return [0, n - 1];
		case "input to common":
			return [1, 0];
		default:
			throw new Error(`no node pair known for "${pair}"`);
	}
}

const rows = readRows();

describe("closed-form networks", () => {
	const finite = rows.filter((row) => row.edges.length > 0 && !row.pair.startsWith("Foster"));

	it("reads the table", () => {
		expect(rows.length).toBeGreaterThan(50);
		expect(finite.length).toBeGreaterThan(45);
	});

	it.each(finite)("$id $network, $pair = $exact ohm", (row) => {
		const [p, q] = row.exact.split("/").map(Number);
		const [u, v] = pairOf(row);
		expect(resistance(row.edges, u, v)).toBeCloseTo(p / (q ?? 1), 12);
	});

	it.each(rows.filter((row) => row.pair.startsWith("Foster")))("$id $network, $pair = $exact", (row) => {
		expect(fosterSum(row.edges)).toBeCloseTo(row.value, 10);
	});

	it.each(rows.filter((row) => row.network.startsWith("star equal to triangle")))("$id $network", (row) => {
		const [ab, bc, ca] = row.network.slice("star equal to triangle ".length).split(",").map(Number);
		const arms = row.exact.split(", ").map((arm) => {
			const [p, q] = arm.split("/").map(Number);
			return p / (q ?? 1);
		});
		const star = arms.map((ohms, i): [number, number, number] => [i, 3, ohms]);
		for (const [u, v] of [
			[0, 1],
			[1, 2],
			[2, 0],
		]) {
			const triangle: [number, number, number][] = [
				[0, 1, ab],
				[1, 2, bc],
				[2, 0, ca],
			];
			expect(resistance(star, u, v)).toBeCloseTo(resistance(triangle, u, v), 12);
		}
	});
});

describe("infinite networks, cut off far away", () => {
	const value = (network: string, pair: string) => {
		const row = rows.find((r) => r.network === network && r.pair === pair);
		if (row === undefined) throw new Error(`no row ${network}, ${pair}`);
		return row.value;
	};

	it("tends to the infinite ladders", () => {
		const edges: [number, number, number][] = [];
		for (let k = 1; k <= 40; k++) edges.push([k, k + 1, 1], [k + 1, 0, 1]);
		expect(resistance(edges, 1, 0)).toBeCloseTo(value("L ladder infinite", "input to common"), 9);
		expect(resistance([...edges, [1, 0, 1]], 1, 0)).toBeCloseTo(
			value("shunt-first infinite ladder", "node 2 to earth"),
			9,
		);
	});

	it("tends to the square grid", () => {
		const side = 101;
		const at = (x: number, y: number) => y * side + x;
		const edges: [number, number, number][] = [];
		for (let y = 0; y < side; y++) {
			for (let x = 0; x < side; x++) {
				if (x > 0) edges.push([at(x - 1, y), at(x, y), 1]);
				if (y > 0) edges.push([at(x, y - 1), at(x, y), 1]);
			}
		}
		const middle = at(50, 50);
		// the cut at 50 steps adds a few parts in ten thousand
		for (const [pair, dx] of [
			["adjacent (1,0)", -1],
			["diagonal (1,1)", 1],
			["(2,2)", 2],
			["(3,3)", 3],
		] as const) {
			const other = dx === -1 ? at(51, 50) : at(50 + dx, 50 + dx);
			const expected = value("infinite square grid", pair);
			expect(Math.abs(resistance(edges, middle, other) / expected - 1)).toBeLessThan(3e-3);
		}
	});

	it("tends to the triangular grid", () => {
		const side = 81;
		const at = (x: number, y: number) => y * side + x;
		const edges: [number, number, number][] = [];
		for (let y = 0; y < side; y++) {
			for (let x = 0; x < side; x++) {
				if (x > 0) edges.push([at(x - 1, y), at(x, y), 1]);
				if (y > 0) edges.push([at(x, y - 1), at(x, y), 1]);
				if (x + 1 < side && y > 0) edges.push([at(x + 1, y - 1), at(x, y), 1]);
			}
		}
		const expected = value("infinite triangular grid", "adjacent");
		expect(Math.abs(resistance(edges, at(40, 40), at(41, 40)) / expected - 1)).toBeLessThan(3e-3);
	});

	it("tends to the honeycomb grid", () => {
		// brick wall: rows joined through, every other upright
		const side = 101;
		const at = (x: number, y: number) => y * side + x;
		const edges: [number, number, number][] = [];
		for (let y = 0; y < side; y++) {
			for (let x = 0; x < side; x++) {
				if (x > 0) edges.push([at(x - 1, y), at(x, y), 1]);
				if (y > 0 && (x + y) % 2 === 0) edges.push([at(x, y - 1), at(x, y), 1]);
			}
		}
		const expected = value("infinite honeycomb grid", "adjacent");
		expect(Math.abs(resistance(edges, at(50, 50), at(51, 50)) / expected - 1)).toBeLessThan(3e-3);
	});
});
