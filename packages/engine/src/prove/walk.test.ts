import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { byName, placeChanges, type Stop, walk } from "./walk.js";

const stop = (a: string, b: string, key = ""): Stop => ({ places: [a, b], key });

test("names with numbers go by number", () => {
	expect(["X10", "X9", "A2"].sort(byName)).toEqual(["A2", "X9", "X10"]);
});

describe("changes of place", () => {
	test("none within two places, whichever way round", () => {
		expect(
			placeChanges([
				["engine", "dash"],
				["dash", "engine"],
				["engine", "dash"],
			]),
		).toBe(0);
	});

	test("one for each lead that goes elsewhere", () => {
		expect(
			placeChanges([
				["engine", "dash"],
				["rear", "engine"],
				["roof", "boot"],
			]),
		).toBe(3);
	});
});

describe("the walk", () => {
	test("stays at the busiest place, goes through its partners, then on from where a lead is", () => {
		const stops = [
			stop("rear", "boot"),
			stop("engine", "dash"),
			stop("engine", "rear"),
			stop("engine", "dash"),
		];
		const steps = walk(stops);
		expect(steps.map(({ at }) => at)).toEqual([1, 3, 2, 0]);
		// The engine first; the last one begins at the rear, where the other lead is.
		expect(steps.map(({ turned }) => turned)).toEqual([false, false, false, false]);
	});

	test("a reading is turned so that its first point is at the place that is kept", () => {
		expect(walk([stop("engine", "dash"), stop("rear", "engine")]).map(({ turned }) => turned)).toEqual([
			false,
			true,
		]);
	});

	test("begins where the leads are", () => {
		const stops = [stop("engine", "dash"), stop("engine", "rear"), stop("boot", "boot")];
		expect(walk(stops, ["boot", "dash"])[0]?.at).toBe(2);
	});

	test("within two places by key", () => {
		const stops = [stop("dash", "dash", "X1 10"), stop("dash", "dash", "X1 9")];
		expect(walk(stops).map(({ at }) => at)).toEqual([1, 0]);
	});

	test("takes every reading once, and no two places come apart", () => {
		const place = fc.constantFrom("a", "b", "c", "d", "e");
		fc.assert(
			fc.property(fc.array(fc.tuple(place, place)), (pairs) => {
				const steps = walk(pairs.map(([a, b]) => stop(a, b)));
				expect(steps.map(({ at }) => at).sort((x, y) => x - y)).toEqual([...pairs.keys()]);
				const groups = steps.map(({ at }) => [...pairs[at]!].sort().join());
				const begun = groups.filter((group, k) => group !== groups[k - 1]);
				expect(new Set(begun).size).toBe(begun.length);
			}),
			{ seed: 11 },
		);
	});
});
