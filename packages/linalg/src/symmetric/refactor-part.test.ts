import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assemble, networks, runs } from "../random-network.test-helper.js";
import { factor } from "./factor.js";
import { refactorPart } from "./refactor-part.js";
import { selectedInverse } from "./selected-inverse.js";
import { solve } from "./solve.js";
import { analyse } from "./symbolic.js";

function must(result: ReturnType<typeof factor>) {
	if (!result.ok) throw new Error(`${result.reason} at ${result.node}`);
	return result.numeric;
}

describe("refactorPart", () => {
	it("gives the bits of a full factorisation, and the old bits on the way back", () => {
		fc.assert(
			fc.property(networks(1e-4, 1e7), fc.array(fc.nat(), { minLength: 1, maxLength: 3 }), (net, picks) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				const numeric = must(factor(s, net.values, net.rowSums));
				const before = numeric.store.slice();
				const places = [...new Set(picks.map((p) => p % net.values.length))].filter((q) => net.values[q] < 0);
				const old = places.map((q) => net.values[q]);
				const values = net.values.slice();
				for (const q of places) values[q] *= 1e-3;
				const node = picks[0] % net.n;
				const sums = net.rowSums.slice();
				sums[node] += 0.5;
				must(
					refactorPart(
						numeric,
						places,
						places.map((q) => values[q]),
						[node],
						[sums[node]],
					),
				);
				expect(numeric.store).toEqual(must(factor(s, values, sums)).store);
				must(refactorPart(numeric, places, old, [node], [net.rowSums[node]]));
				expect(numeric.store).toEqual(before);
			}),
			runs(200),
		);
	});

	it("works on a factor made without row sums, diagonal entries and all", () => {
		fc.assert(
			fc.property(networks(1e-1, 1e2), fc.nat(), (net, p) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				const numeric = must(factor(s, net.values));
				const values = net.values.slice();
				const place = net.pattern.diagonal[p % net.n];
				values[place] += 2;
				must(refactorPart(numeric, [place], [values[place]]));
				expect(numeric.store).toEqual(must(factor(s, values)).store);
			}),
			runs(60),
		);
	});

	it("keeps all digits when a wire opens and leaves a part on 1e7 ohm", () => {
		// 0 (1 ohm to reference) - wire 1e-2 ohm - 1 - 1e7 ohm to reference; 1e-6 A into node 1
		const net = assemble(2, [0, 0, 1], [-1, 1, -1], [1, 1e2, 1e-7]);
		const s = analyse(2, net.pattern.colPtr, net.pattern.rowIdx);
		const numeric = must(factor(s, net.values, net.rowSums));
		must(refactorPart(numeric, [net.pattern.edge[1]], [0]));
		expect(solve(numeric, Float64Array.of(0, 1e-6))[1]).toBeCloseTo(10, 13);
	});

	it("reports the part that came loose, and recovers when it is joined again", () => {
		const net = assemble(3, [0, 0, 1], [-1, 1, 2], [1, 1, 1]);
		const numeric = must(factor(analyse(3, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums));
		const before = numeric.store.slice();
		const loose = refactorPart(numeric, [net.pattern.edge[1]], [0]);
		expect(loose).toMatchObject({ ok: false, reason: "not positive definite", pivot: 0 });
		if (!loose.ok) expect([1, 2]).toContain(loose.node);
		expect(() => solve(numeric, new Float64Array(3))).toThrow("the last factorisation failed");
		expect(() => selectedInverse(numeric)).toThrow("the last factorisation failed");
		must(refactorPart(numeric, [net.pattern.edge[1]], [-1]));
		expect(numeric.store).toEqual(before);
	});

	it("recovers from a failure by way of another change", () => {
		const net = assemble(3, [0, 0, 1], [-1, 1, 2], [1, 1, 1]);
		const s = analyse(3, net.pattern.colPtr, net.pattern.rowIdx);
		const numeric = must(factor(s, net.values, net.rowSums));
		expect(refactorPart(numeric, [net.pattern.edge[1]], [0]).ok).toBe(false);
		must(refactorPart(numeric, [], [], [2], [3])); // node 2 held to the reference instead
		const values = net.values.slice();
		values[net.pattern.edge[1]] = 0;
		expect(numeric.store).toEqual(must(factor(s, values, Float64Array.of(1, 0, 3))).store);
	});

	it("refuses misuse by name", () => {
		const net = assemble(2, [0, 0], [-1, 1], [1, 1]);
		const s = analyse(2, net.pattern.colPtr, net.pattern.rowIdx);
		const numeric = must(factor(s, net.values, net.rowSums));
		const edge = net.pattern.edge[1];
		expect(() => refactorPart(numeric, [99], [0])).toThrow("entry 99 is outside 0..2");
		expect(() => refactorPart(numeric, [edge], [1])).toThrow("entry (1, 0) cannot become 1");
		expect(() => refactorPart(numeric, [edge], [])).toThrow("1 entries but 0 values");
		expect(() => refactorPart(numeric, [], [], [0], [-1])).toThrow("row sum 0 cannot become -1");
		expect(() => refactorPart(numeric, [], [], [5], [1])).toThrow("node 5 is outside 0..1");
		expect(() => refactorPart(must(factor(s, net.values)), [], [], [0], [1])).toThrow("without row sums");
	});
});
