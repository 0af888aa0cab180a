import fc from "fast-check";
import { expect, test } from "vitest";
import type { Fault } from "../faults/index.js";
import type { Item } from "./items.js";
import type { Evidence } from "./types.js";
import { beginWeighing, logSum, total, weighMore } from "./weighing.js";

const EVIDENCE = { title: "", of: "converted", occasions: [{}] } as unknown as Evidence;

/** A fault of equally likely patterns. */
const faultOf = (patterns: number): Fault =>
	({
		patterns: Array.from({ length: patterns }, () => ({
			weight: 1 / patterns,
			change: { branches: [], added: [] },
		})),
	}) as unknown as Fault;

/** An item with a log likelihood for each pattern. */
const itemOf = (fault: Fault, logs: readonly number[]): Item =>
	({
		occasion: 0,
		log: (_fault: unknown, pattern: Fault["patterns"][number]) => logs[fault.patterns.indexOf(pattern)]!,
	}) as unknown as Item;

test("however the items are dealt out, the sum is that of weighing every pattern by every item", () => {
	const rows = fc.integer({ min: 1, max: 4 }).chain((patterns) => {
		const row = fc.array(fc.double({ min: -60, max: 0, noNaN: true }), {
			minLength: patterns,
			maxLength: patterns,
		});
		return fc.tuple(fc.constant(patterns), fc.array(row, { minLength: 3, maxLength: 9 }));
	});
	fc.assert(
		fc.property(rows, ([patterns, table]) => {
			const fault = faultOf(patterns);
			const items = table.map((logs) => itemOf(fault, logs));
			const w = beginWeighing(fault, 1, items.slice(0, 1), EVIDENCE);
			weighMore(w, items.slice(1, 2));
			weighMore(w, items.slice(2));
			const sums = fault.patterns.map((_, p) => table.reduce((sum, logs) => sum + logs[p]!, 0));
			const whole = logSum(sums.map((sum) => sum - Math.log(patterns)));
			// Patterns put off for good weigh less than exp(-16) of the best each.
			expect(Math.abs(total(w) - whole)).toBeLessThan(1e-6);
			expect(total(w)).toBeLessThanOrEqual(w.bound + 1e-9);
		}),
		{ seed: 16, numRuns: 500 },
	);
});
