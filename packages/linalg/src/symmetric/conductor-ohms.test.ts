import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assemble, networks, runs, type TestNetwork } from "../random-network.test-helper.js";
import { ConductorOhms } from "./conductor-ohms.js";
import { factor } from "./factor.js";
import { solve } from "./solve.js";
import { analyse } from "./symbolic.js";

function factored(net: TestNetwork) {
	const result = factor(analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums);
	if (!result.ok) throw new Error(result.reason);
	return result.numeric;
}

/** Nodes -1 (the reference) to n - 1. */
const ends = (net: TestNetwork, picks: readonly number[]) => picks.map((p) => (p % (net.n + 1)) - 1);

describe("ConductorOhms", () => {
	it("are those of full solves, between any conductors", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e4), fc.array(fc.nat(), { minLength: 8, maxLength: 8 }), (net, picks) => {
				const numeric = factored(net);
				const nodes = ends(net, picks);
				const k = nodes.length / 2;
				const b = Array.from({ length: k }, (_, c) => {
					const column = new Float64Array(net.n);
					if (nodes[2 * c] >= 0) column[nodes[2 * c]] += 1;
					if (nodes[2 * c + 1] >= 0) column[nodes[2 * c + 1]] -= 1;
					return column;
				});
				const x = b.map((column) => solve(numeric, column.slice()));
				const ohms = new ConductorOhms(numeric);
				const s = ohms.among(nodes);
				const largest = Math.max(...x.flatMap((column) => [...column].map(Math.abs)), 1e-9);
				for (let i = 0; i < k; i++) {
					for (let j = 0; j < k; j++) {
						const expected = b[i].reduce((sum, weight, node) => sum + weight * x[j][node], 0);
						expect(Math.abs(s[i * k + j] - expected)).toBeLessThan(1e-11 * largest);
					}
					// Nothing of one question is left for the next.
					const own = ohms.own(nodes[2 * i], nodes[2 * i + 1]);
					expect(Math.abs(own - s[i * k + i])).toBeLessThanOrEqual(1e-15 * own);
					expect(ohms.own(nodes[2 * i], nodes[2 * i + 1])).toBe(own);
				}
			}),
			runs(200),
		);
	});

	// Maximum principle of resistor networks (P. G. Doyle, J. L. Snell, 'Random walks and electric networks', 1984, ch. 1).
	it("bound every difference that a current between the ends makes anywhere", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e4), fc.nat(), fc.nat(), (net, one, two) => {
				const numeric = factored(net);
				const [a, b] = ends(net, [one, two]) as [number, number];
				const amperes = new Float64Array(net.n);
				if (a >= 0) amperes[a] += 1;
				if (b >= 0) amperes[b] -= 1;
				const volts = [...solve(numeric, amperes), 0];
				const own = new ConductorOhms(numeric).own(a, b);
				const size = Math.max(...volts.map(Math.abs));
				expect(Math.max(...volts) - Math.min(...volts)).toBeLessThanOrEqual(own + 1e-12 * size);
			}),
			runs(200),
		);
	});

	it("keep all digits of a microhm beside a gigohm", () => {
		// 0 - 1e9 ohm to the reference, 1e-6 ohm between 0 and 1
		const net = assemble(2, [0, 0], [-1, 1], [1e-9, 1e6]);
		const ohms = new ConductorOhms(factored(net));
		expect(ohms.own(0, 1)).toBeCloseTo(1e-6, 18);
		expect(ohms.own(1, -1) / (1e9 + 1e-6)).toBeCloseTo(1, 13);
	});

	it("take more conductors than there was room for", () => {
		const n = 200;
		const line = Array.from({ length: n }, (_, k) => k);
		const net = assemble(
			n,
			line,
			line.map((k) => k - 1),
			line.map(() => 1),
		);
		const among = new ConductorOhms(factored(net)).among(line.flatMap((k) => [k, -1]));
		for (let i = 0; i < n; i += 7)
			for (let j = 0; j < n; j += 5) expect(among[i * n + j]).toBeCloseTo(Math.min(i, j) + 1, 10);
	});
});
