import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjacency } from "../ordering/adjacency.js";
import { columnsOfL } from "../ordering/elimination-game.test-helper.js";
import { networks, runs } from "../random-network.test-helper.js";
import { analyse } from "./symbolic.js";

const ints = (...v: number[]) => Int32Array.from(v);

describe("analyse", () => {
	it("finds the structure the elimination game finds", () => {
		fc.assert(
			fc.property(networks(1, 1), fc.boolean(), ({ n, pattern }, natural) => {
				const s = analyse(n, pattern.colPtr, pattern.rowIdx, natural ? "natural" : "minimum degree");
				const { ptr, idx } = adjacency(n, pattern.colPtr, pattern.rowIdx);
				const columns = columnsOfL(n, ptr, idx, s.perm);
				for (let k = 0; k < n; k++) {
					expect([...s.lRow.subarray(s.lPtr[k], s.lPtr[k + 1])]).toEqual(columns[k]);
					expect(s.parent[k]).toBe(columns[k][0] ?? -1);
					expect(s.inverse[s.perm[k]]).toBe(k);
				}
			}),
			runs(300),
		);
	});

	it("lists rows and columns of the same entries", () => {
		fc.assert(
			fc.property(networks(1, 1), ({ n, pattern }) => {
				const s = analyse(n, pattern.colPtr, pattern.rowIdx);
				expect(s.rowPtr[n]).toBe(s.lPtr[n]);
				for (let k = 0; k < n; k++) {
					for (let q = s.rowPtr[k]; q < s.rowPtr[k + 1]; q++) {
						expect(s.lRow[s.rowPos[q]]).toBe(k);
						expect(s.rowPos[q]).toBeGreaterThanOrEqual(s.lPtr[s.rowCol[q]]);
						expect(s.rowPos[q]).toBeLessThan(s.lPtr[s.rowCol[q] + 1]);
					}
				}
			}),
			runs(100),
		);
	});

	it("numbers every subtree in one piece", () => {
		fc.assert(
			fc.property(networks(1, 1), ({ n, pattern }) => {
				const { parent } = analyse(n, pattern.colPtr, pattern.rowIdx);
				const size = new Int32Array(n).fill(1);
				for (let j = 0; j < n; j++) if (parent[j] >= 0) size[parent[j]] += size[j];
				// the descendants of j are j - size + 1 .. j, so each of them has its parent in that range
				for (let j = 0; j < n; j++) {
					for (let i = j - size[j] + 1; i < j; i++) {
						expect(parent[i]).toBeGreaterThan(i);
						expect(parent[i]).toBeLessThanOrEqual(j);
					}
				}
			}),
			runs(100),
		);
	});

	it("eliminates a path of five without fill", () => {
		const s = analyse(5, ints(0, 1, 2, 3, 4, 4), ints(1, 2, 3, 4));
		expect(s.lPtr[5]).toBe(4);
	});

	it("names what is wrong with a pattern", () => {
		expect(() => analyse(2, ints(0, 1, 2), ints(1, 0))).toThrow(
			"pair (0, 1) is stored twice, again in column 1",
		);
		expect(() => analyse(2, ints(0, 2, 2), ints(0, 0))).toThrow("diagonal entry 0 is stored twice");
		expect(() => analyse(2, ints(0, 0, 0), ints(), ints(0, 0))).toThrow("order is no permutation of 0..1: 0");
		expect(() => analyse(2, ints(0, 0, 0), ints(), ints(0))).toThrow("order has 1 entries, expected 2");
	});

	it("can be posted to a worker: only typed arrays and numbers", () => {
		const s = analyse(3, ints(0, 2, 4, 5), ints(0, 1, 1, 2, 2));
		expect(structuredClone(s)).toEqual(s);
	});
});
