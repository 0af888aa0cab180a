import fc from "fast-check";
import { expect, test } from "vitest";
import { beyond, type PhotoSize } from "./photo-bound.js";

const photo = (name: string, stored: string, bytes: number): PhotoSize => ({
	...{ job: "a", photo: name, stored, bytes },
});

test("the oldest go first, and no more than need be", () => {
	const kept = [photo("new", "2030-03", 40), photo("old", "2030-01", 50), photo("mid", "2030-02", 30)];
	const names = (bound: number) => beyond(kept, bound).map((one) => one.photo);
	expect(names(120)).toEqual([]);
	expect(names(119)).toEqual(["old"]);
	expect(names(69)).toEqual(["old", "mid"]);
	expect(names(39)).toEqual(["old", "mid", "new"]);
});

test("whatever is kept: what stays is within the bound, nothing that stays is older than what goes", () => {
	const some = fc.array(fc.record({ day: fc.nat(20), bytes: fc.nat(100) }), { maxLength: 20 });
	fc.assert(
		fc.property(some, fc.nat(800), (list, bound) => {
			const kept = list.map(({ day, bytes }, k) => photo(String(k), `2030-01-${10 + day}`, bytes));
			const out = beyond(kept, bound);
			const stay = kept.filter((one) => !out.includes(one));
			expect(stay.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(bound);
			for (const gone of out) for (const one of stay) expect(gone.stored <= one.stored).toBe(true);
		}),
		{ seed: 3, numRuns: 200 },
	);
});
