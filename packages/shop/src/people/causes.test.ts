import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { apart, inCausalOrder, knew } from "./causes.js";

const entry = (place: number, seen: number, device = "", counter = 0) => ({ place, seen, device, counter });

describe("what came before what", () => {
	test("between tablets by what was seen, on one tablet by its count, never by a clock", () => {
		expect(knew(entry(5, 3), entry(3, 0))).toBe(true);
		expect(knew(entry(5, 2), entry(3, 0))).toBe(false);
		expect(apart(entry(5, 2), entry(3, 2))).toBe(true);
		// One tablet, offline: it had seen nothing, yet knows what it wrote itself.
		expect(knew(entry(5, 0, "t1", 2), entry(3, 0, "t1", 1))).toBe(true);
		expect(apart(entry(5, 0, "t1", 2), entry(3, 0, "t2", 1))).toBe(true);
	});

	test("a tablet's entries that were sent in another order come back in its own", () => {
		const sent = [entry(1, 0, "t1", 2), entry(2, 1, "t2", 1), entry(3, 0, "t1", 1), entry(4, 3)];
		expect(inCausalOrder(sent).map(({ place }) => place)).toEqual([3, 1, 2, 4]);
	});

	test("whatever the order of sending, every entry stays once, and each tablet's in its own order", () => {
		const tablets = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 4 });
		fc.assert(
			fc.property(tablets, fc.infiniteStream(fc.nat()), (sizes, luck) => {
				const all = sizes.flatMap((size, t) =>
					Array.from({ length: size }, (_, k) => ({ device: `t${t}`, counter: k + 1 })),
				);
				const sent = all
					.map((one) => ({ one, at: luck.next().value as number }))
					.sort((a, b) => a.at - b.at)
					.map(({ one }, at) => ({ ...one, place: at + 1, seen: 0 }));
				const ordered = inCausalOrder(sent);
				expect(ordered.map(({ place }) => place).sort((a, b) => a - b)).toEqual(
					sent.map(({ place }) => place),
				);
				for (const t of sizes.keys()) {
					const counts = ordered.filter(({ device }) => device === `t${t}`).map(({ counter }) => counter);
					expect(counts).toEqual(counts.toSorted((a, b) => a - b));
				}
			}),
			{ seed: 6 },
		);
	});
});
