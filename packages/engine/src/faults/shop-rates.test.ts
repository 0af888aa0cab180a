import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Touched } from "../recipe/index.js";
import {
	NO_RECORD,
	type Repair,
	ratesFrom,
	type ShopRates,
	type ShopRecord,
	withRates,
} from "./shop-rates.js";
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
const repair = (over: Partial<Repair> = {}): Repair => ({ kind: "open", touched: true, person: "", ...over });
const times = (count: number, one: Repair): Repair[] => Array.from({ length: count }, () => one);
const record = (over: Partial<ShopRecord>): ShopRecord => ({ ...NO_RECORD, ...over });
const rateOf = ({ kinds }: ShopRates, kind: string, hands: boolean) =>
	kinds.find((rate) => rate.kind === kind && rate.touched === hands)!;

describe("chances by the shop's own counts", () => {
	it("nothing counted: the tables' chances", () => {
		const rates = ratesFrom(faults, touched, NO_RECORD);
		expect(rates).toEqual({ cars: 0, kinds: [], people: [] });
		expect(withRates(faults, touched, rates)).toEqual(faults);
	});

	it("5 open crimps on 1,000 cars where 1 was to be expected: (1 + 5) / (1 + 1) = 3 times", () => {
		const rates = ratesFrom(faults, touched, record({ cars: 1000, repairs: times(5, repair()) }));
		const rate = rateOf(rates, "open", true);
		expect(rate).toMatchObject({ found: 5, items: 1 });
		expect(rate.expected).toBeCloseTo(1, 12);
		expect(rate.factor).toBeCloseTo(3, 12);
		expect([rate.before, rate.after]).toEqual([1e-3, expect.closeTo(3e-3, 12)]);
		expect(withRates(faults, touched, rates)[0]!.prior).toBeCloseTo(3e-3, 12);
	});

	it("many sound cars make it less likely; untouched ones count by themselves", () => {
		const rates = ratesFrom(faults, touched, record({ cars: 500_000 }));
		// 5e5 x (1e-6 + 3e-6) = 2 expected, none found: a third.
		const rate = rateOf(rates, "open", false);
		expect(rate).toMatchObject({ found: 0, items: 2 });
		expect(rate.factor).toBeCloseTo(1 / 3, 12);
		expect(withRates(faults, touched, rates)[1]!.prior).toBeCloseTo(old.prior / 3, 18);
	});

	it("a person's factor is what the kinds leave", () => {
		const repairs = times(5, repair({ person: "first" }));
		const work = [
			{ person: "first", cars: 500 },
			{ person: "second", cars: 500 },
		];
		const rates = ratesFrom(faults, touched, record({ cars: 1000, repairs, work }));
		// Open: 1 expected, 5 found: 3 times. Steps left out: 3 expected, none: a quarter. A car: 3e-3 + 0.75e-3.
		const each = 500 * (3 * 1e-3 + 0.25 * 3e-3);
		expect(rates.people).toEqual([
			{
				person: "first",
				found: 5,
				expected: expect.closeTo(each, 9),
				factor: expect.closeTo(6 / (1 + each), 9),
			},
			{
				person: "second",
				found: 0,
				expected: expect.closeTo(each, 9),
				factor: expect.closeTo(1 / (1 + each), 9),
			},
		]);
		const by = (person: string) => withRates(faults, touched, rates, new Map([["7", person]]));
		expect(by("first")[0]!.prior / by("second")[0]!.prior).toBeCloseTo(6, 9);
		expect(by("first")[3]!.prior / by("second")[3]!.prior).toBeCloseTo(6, 9);
		expect(by("first")[1]!.prior).toBe(by("second")[1]!.prior);
	});

	it("a kind that this car has not is counted, and changes nothing", () => {
		const rates = ratesFrom(faults, touched, record({ cars: 1, repairs: [repair({ kind: "rust" })] }));
		expect(rateOf(rates, "rust", true)).toMatchObject({ found: 1, items: 0, factor: 1, before: 0, after: 0 });
	});

	it("counts that are none", () => {
		for (const cars of [-1, 0.5, Number.NaN, 0])
			expect(() => ratesFrom(faults, touched, record({ cars, repairs: [repair()] }))).toThrow(RangeError);
		const work = [{ person: "first", cars: Number.NaN }];
		expect(() => ratesFrom(faults, touched, record({ cars: 1, work }))).toThrow(/first worked on NaN cars/);
	});
});

describe("whatever is counted", () => {
	const person = fc.constantFrom("first", "second");
	const any = fc.record({
		cars: fc.integer({ min: 1, max: 10_000 }),
		repairs: fc.array(
			fc.record({
				kind: fc.constantFrom("open", "step left out", "rust"),
				touched: fc.boolean(),
				person: fc.oneof(fc.constant(""), person),
			}),
			{ maxLength: 12 },
		),
		work: fc.uniqueArray(fc.record({ person, cars: fc.double({ min: 0, max: 1e4, noNaN: true }) }), {
			selector: (one) => one.person,
		}),
	});

	it("chances stay chances, whatever the order, and a repair taken back leaves no trace", () => {
		fc.assert(
			fc.property(any, (one) => {
				const rates = ratesFrom(faults, touched, one);
				for (const { prior } of withRates(faults, touched, rates, new Map([["7", "first"]]))) {
					expect(prior).toBeGreaterThan(0);
					expect(prior).toBeLessThanOrEqual(0.5);
				}
				const found = rates.kinds.reduce((sum, rate) => sum + rate.found, 0);
				expect(found).toBe(one.repairs.length);
				const turned = ratesFrom(faults, touched, { ...one, repairs: one.repairs.toReversed() });
				const chances = ({ kinds }: ShopRates) =>
					kinds.map((rate) => [rate.kind, rate.found, rate.after]).sort();
				expect(chances(turned)).toEqual(chances(rates));
			}),
			{ seed: 60, numRuns: 200 },
		);
	});

	it("one more of a kind makes it likelier, one fewer less likely", () => {
		fc.assert(
			fc.property(any, (one) => {
				const more = { ...one, repairs: [...one.repairs, repair()] };
				expect(rateOf(ratesFrom(faults, touched, more), "open", true).factor).toBeGreaterThan(
					rateOf(ratesFrom(faults, touched, one), "open", true).factor,
				);
			}),
			{ seed: 61, numRuns: 100 },
		);
	});
});
