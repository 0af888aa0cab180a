import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	assemble,
	loaded,
	networks,
	normDifference,
	runs,
	type TestNetwork,
} from "../random-network.test-helper.js";
import { factor, type Numeric } from "./factor.js";
import { Patch, withAncestors } from "./patch.js";
import { solve } from "./solve.js";
import { analyse } from "./symbolic.js";

function must(result: ReturnType<typeof factor>): Numeric {
	if (!result.ok) throw new Error(`${result.reason} at ${result.node}`);
	return result.numeric;
}

const symbolicOf = (net: TestNetwork) => analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);

/** Two points that a hundred others hang on, by one of them or by both: their columns come in groups. */
const siemens = fc.double({ min: -7, max: 4, noNaN: true }).map((decades) => 10 ** decades);
const spoke = fc.record({ to: fc.nat(2), one: siemens, two: siemens });
const stars = fc.array(spoke, { minLength: 80, maxLength: 120 }).map((spokes) => {
	const edges: [number, number, number][] = [
		[0, -1, 1],
		[1, -1, 1e-3],
		[0, 1, 1],
	];
	spokes.forEach(({ to, one, two }, k) => {
		if (to !== 1) edges.push([k + 2, 0, one]);
		if (to !== 0) edges.push([k + 2, 1, two]);
	});
	return assemble(
		spokes.length + 2,
		edges.map(([u]) => u),
		edges.map(([, v]) => v),
		edges.map(([, , g]) => g),
	);
});
const hubs = loaded(fc.oneof(stars, networks(1e-4, 1e7)));

/** A few conductors opened or made a thousand times weaker, and one more siemens from a node to the reference. */
function changeOf(net: TestNetwork, picks: readonly number[]) {
	const places = [...new Set(picks.map((p) => p % net.values.length))].filter((q) => net.values[q] < 0);
	const values = net.values.slice();
	for (const q of places) values[q] *= 1e-3;
	const node = picks[0] % net.n;
	const sums = net.rowSums.slice();
	sums[node] += 1;
	return { places, node, values, sums };
}

describe("Patch", () => {
	it("has the columns of the changed matrix to rounding, and the old bits after", () => {
		let grouped = 0;
		fc.assert(
			fc.property(hubs, fc.array(fc.nat(), { minLength: 1, maxLength: 3 }), ({ net }, picks) => {
				const s = symbolicOf(net);
				const numeric = must(factor(s, net.values, net.rowSums));
				const patch = new Patch(numeric);
				const before = numeric.store.slice();
				const { places, node, values, sums } = changeOf(net, picks);
				const anew = must(factor(s, values, sums)).store;
				const changed = places.map((q) => values[q]);
				for (let again = 0; again < 2; again++) {
					patch.during(places, changed, [node], [sums[node]], (result) => {
						const own = must(result).store;
						// No entry is a difference: each is right by itself, however small.
						for (let p = 0; p < own.length; p++)
							expect(Math.abs(own[p] - anew[p])).toBeLessThanOrEqual(1e-13 * Math.abs(anew[p]));
						if (own.some((x, p) => x !== anew[p])) grouped++;
					});
					expect([numeric.store, numeric.values.subarray(0, net.values.length), numeric.rowSums]).toEqual([
						before,
						net.values,
						net.rowSums,
					]);
				}
			}),
			runs(150),
		);
		// Another order of the same sums: where no bit ever differed, no group was used.
		expect(grouped).toBeGreaterThan(3);
	});

	it("solves for the wanted entries, with other currents at the nodes that the change names", () => {
		fc.assert(
			fc.property(hubs, fc.array(fc.nat(), { minLength: 1, maxLength: 3 }), ({ net, b }, picks) => {
				const s = symbolicOf(net);
				const numeric = must(factor(s, net.values, net.rowSums));
				const patch = new Patch(numeric);
				const kept = patch.forward(b);
				const { places, node, values, sums } = changeOf(net, picks);
				const other = b.slice();
				other[node] += 3;
				const expected = solve(must(factor(s, values, sums)), other.slice());
				const nodes = picks.map((p) => p % net.n);
				const out = new Float64Array(net.n);
				patch.during(
					places,
					places.map((q) => values[q]),
					[node],
					[sums[node]],
					() => patch.solve(kept, other, withAncestors(s, nodes), out),
				);
				const own = Float64Array.from(nodes, (i) => out[s.inverse[i]]);
				expect(
					normDifference(
						own,
						Float64Array.from(nodes, (i) => expected[i]),
					),
				).toBeLessThan(1e-9);
			}),
			runs(150),
		);
	});

	it("says where a part came loose, and the factor is good again after", () => {
		const net = assemble(3, [0, 0, 1], [-1, 1, 2], [1, 1, 1]);
		const numeric = must(factor(symbolicOf(net), net.values, net.rowSums));
		const patch = new Patch(numeric);
		const before = numeric.store.slice();
		patch.during([net.pattern.edge[1]], [0], [], [], (result) => {
			expect(result).toMatchObject({ ok: false, reason: "not positive definite", pivot: 0 });
		});
		expect(numeric.store).toEqual(before);
		expect(Array.from(solve(numeric, Float64Array.of(0, 0, 1)))).toEqual([1, 2, 3]);
	});

	it("is put back when the work throws", () => {
		const net = assemble(2, [0, 0], [-1, 1], [1, 1]);
		const numeric = must(factor(symbolicOf(net), net.values, net.rowSums));
		const before = numeric.store.slice();
		const work = () => {
			throw new Error("work");
		};
		expect(() => new Patch(numeric).during([net.pattern.edge[1]], [-5], [], [], work)).toThrow("work");
		expect(numeric.store).toEqual(before);
	});

	it("refuses a factor made without row sums, and what refactorPart refuses", () => {
		const net = assemble(2, [0, 0], [-1, 1], [1, 1]);
		expect(() => new Patch(must(factor(symbolicOf(net), net.values)))).toThrow("without row sums");
		const patch = new Patch(must(factor(symbolicOf(net), net.values, net.rowSums)));
		expect(() => patch.during([99], [0], [], [], () => 0)).toThrow("entry 99 is outside 0..2");
		expect(() => patch.forward(new Float64Array(3))).toThrow("right-hand side has 3 entries, expected 2");
	});
});
