import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Touched } from "../recipe/index.js";
import { type Repair, ratesFrom, withRates } from "./shop-rates.js";
import type { Fault } from "./types.js";

const none = new Map<string, string[]>();
const touched: Touched = {
	contacts: new Map([["A.1", ["7"]]]),
	...{ wires: none, ends: none, joints: none, connectors: none, parts: none },
};
const fault = (id: string, kind: string, prior: number, path: string[]): Fault => ({
	...{ id, kind, where: id, place: "", prior, patterns: [], shakenBy: "", inParts: [], path, mend: "" },
});
const worked = fault("open:crimp:A.1", "open", 1e-3, ["A.1"]);
const old = fault("open:crimp:B.1", "open", 1e-6, ["B.1"]);
const older = fault("open:crimp:C.1", "open", 3e-6, ["C.1"]);
const forgotten = fault("step left out:7", "step left out", 3e-3, ["A.1"]);
const faults = [worked, old, older, forgotten];
const repair = (over: Partial<Repair>): Repair => ({
	...{ id: "1", kind: "open", touched: true, person: "", found: 0, exposures: 0 },
	...over,
});

describe("chances by the shop's own counts", () => {
	it("nothing counted: the tables' chances", () => {
		const rates = ratesFrom(faults, touched, []);
		expect(rates).toEqual({ kinds: [], people: [] });
		expect(withRates(faults, touched, rates)).toEqual(faults);
	});

	it("5 open crimps of 1,000 made where 1 was to be expected: (1 + 5) / (1 + 1) = 3 times", () => {
		const rates = ratesFrom(faults, touched, [repair({ found: 5, exposures: 1000 })]);
		const [rate] = rates.kinds;
		expect(rate).toMatchObject({ kind: "open", touched: true, found: 5, exposures: 1000 });
		expect(rate!.expected).toBeCloseTo(1, 12);
		expect(rate!.factor).toBeCloseTo(3, 12);
		expect(rate!.chance).toBeCloseTo(3e-3, 12);
		const [now, untouched] = withRates(faults, touched, rates);
		expect(now!.prior).toBeCloseTo(3e-3, 12);
		expect(untouched!.prior).toBe(old.prior);
	});

	it("many sound ones make it less likely; untouched ones count by themselves, at the mean of the tables", () => {
		const rates = ratesFrom(faults, touched, [repair({ touched: false, exposures: 1_000_000 })]);
		// 1e6 x (1e-6 + 3e-6) / 2 = 2 expected, none found: a third.
		expect(rates.kinds[0]!.factor).toBeCloseTo(1 / 3, 12);
		expect(withRates(faults, touched, rates)[0]!.prior).toBe(worked.prior);
		expect(withRates(faults, touched, rates)[1]!.prior).toBeCloseTo(old.prior / 3, 18);
	});

	it("a person's factor is what the kinds leave", () => {
		const repairs = [
			repair({ id: "1", person: "first", found: 5, exposures: 1000 }),
			repair({ id: "2", person: "second", found: 0, exposures: 1000 }),
		];
		const rates = ratesFrom(faults, touched, repairs);
		// Kind: (1 + 5) / (1 + 2) = 2, so 2 expected of each: (1 + 5) / (1 + 2) and (1 + 0) / (1 + 2).
		expect(rates.people.map(({ factor }) => factor)).toEqual([
			expect.closeTo(2, 12),
			expect.closeTo(1 / 3, 12),
		]);
		const by = (person: string) => withRates(faults, touched, rates, new Map([["7", person]]));
		expect(by("first")[0]!.prior).toBeCloseTo(4e-3, 12);
		expect(by("second")[0]!.prior).toBeCloseTo(2e-3 / 3, 12);
		expect(by("first")[3]!.prior).toBeCloseTo(6e-3, 12);
		expect(by("first")[1]!.prior).toBe(old.prior);
	});

	it("a kind that there is not, and counts that are none", () => {
		expect(() => ratesFrom(faults, touched, [repair({ kind: "rust" })])).toThrow(
			/repair 1: no kind of fault 'rust'; known: open, step left out/,
		);
		for (const [found, exposures] of [
			[2, 1],
			[-1, 1],
			[0.5, 1],
			[0, Number.NaN],
		] as const)
			expect(() => ratesFrom(faults, touched, [repair({ found, exposures })])).toThrow(RangeError);
	});
});

describe("whatever is counted", () => {
	const any = fc.array(
		fc
			.record({
				id: fc.string(),
				kind: fc.constantFrom("open", "step left out"),
				touched: fc.boolean(),
				person: fc.constantFrom("", "first", "second"),
				exposures: fc.nat(10_000),
				share: fc.double({ min: 0, max: 1, noNaN: true }),
			})
			.map(({ share, ...rest }): Repair => ({ ...rest, found: Math.floor(share * rest.exposures) })),
		{ maxLength: 12 },
	);

	it("chances stay chances, whatever the order, and a repair taken back leaves no trace", () => {
		fc.assert(
			fc.property(any, any, (one, two) => {
				const rates = ratesFrom(faults, touched, one);
				for (const { prior } of withRates(faults, touched, rates, new Map([["7", "first"]]))) {
					expect(prior).toBeGreaterThan(0);
					expect(prior).toBeLessThanOrEqual(0.5);
				}
				const both = [...one, ...two];
				expect(ratesFrom(faults, touched, both.slice(0, one.length))).toEqual(rates);
				const kinds = (list: Repair[]) =>
					ratesFrom(faults, touched, list).kinds.map(
						({ kind, touched, found }) => `${kind}${touched}${found}`,
					);
				expect(kinds([...both].reverse()).sort()).toEqual(kinds(both).sort());
			}),
			{ seed: 60, numRuns: 200 },
		);
	});
});
