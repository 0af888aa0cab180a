/** Effects kept as bytes: what comes back answers as what was found; what is damaged or of another car is refused. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { Finder } from "../find.js";
import type { Evidence } from "../types.js";
import { EffectsError, effectsFromBytes, effectsToBytes } from "./bytes.js";

const car = demoCar("small");
const found = new Finder(car, "converted");
const effects = found.effects();
const bytes = effectsToBytes(effects);

const evidence: Evidence = {
	title: "",
	of: "converted",
	occasions: [
		{
			...{ note: "", reseated: "", codes: ["B1A02"], units: ["CU"], functions: { "unit-awake": true } },
			...{ readings: [], bench: {} },
		},
	],
};

describe("effects of the small car", () => {
	it("come back as they were", () => {
		expect(effectsFromBytes(bytes)).toEqual(effects);
	});

	it("names beyond ASCII too", () => {
		const named = { ...effects, rows: effects.rows.map((row, k) => (k === 0 ? "Gerät \n €" : row)) };
		expect(effectsFromBytes(effectsToBytes(named))).toEqual(named);
	});

	it("a finder with them ranks as one that finds them itself", () => {
		const kept = new Finder(car, "converted");
		expect(kept.use(effectsFromBytes(bytes))).toBe(true);
		const own = found.find(evidence);
		const theirs = kept.find(evidence);
		expect(theirs.faults.map(({ id }) => id)).toEqual(own.faults.map(({ id }) => id));
		theirs.faults.forEach(({ posterior }, k) => {
			expect(posterior).toBeCloseTo(own.faults[k]!.posterior, 4);
		});
	});

	it("are small, and most faults leave most as it was", () => {
		const patterns = effects.first.length - 1;
		expect(effects.row.length).toBeLessThan(0.3 * patterns * effects.rows.length);
		expect(effects.row.length).toBeGreaterThan(patterns / 2);
	});

	it("the key is that of the tables: the same again, another for another loom", () => {
		expect(new Finder(car, "converted").key).toBe(effects.key);
		const delivered = new Finder(car, "delivered");
		expect(delivered.key).not.toBe(effects.key);
		expect(delivered.use(effects)).toBe(false);
	});

	it("any byte changed, left out or added is noticed", () => {
		const changed = fc.tuple(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 })).map(([at, by]) => {
			const copy = bytes.slice();
			copy[at] = copy[at]! ^ by;
			return copy;
		});
		const cut = fc.nat(bytes.length - 1).map((length) => bytes.slice(0, length));
		const longer = fc.uint8Array({ minLength: 1, maxLength: 40 }).map((more) => {
			const copy = new Uint8Array(bytes.length + more.length);
			copy.set(bytes);
			copy.set(more, bytes.length);
			return copy;
		});
		fc.assert(
			fc.property(fc.oneof(changed, cut, longer, fc.uint8Array({ maxLength: 200 })), (damaged) => {
				expect(() => effectsFromBytes(damaged)).toThrow(EffectsError);
			}),
			{ seed: 70, numRuns: 300 },
		);
	});
});
