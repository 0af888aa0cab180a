import { expect, test } from "vitest";
import { crowdedSplices } from "./crowded-splices.js";
import { benchCircuit, joint, wire } from "./support/bench-loom.test-helper.js";

const car = (count: number, bundle: (k: number) => string) =>
	benchCircuit({
		parts: [],
		joints: Array.from({ length: count }, (_, k) => joint(`S${k}`, "splice", { place: "sill" })),
		wires: Array.from({ length: count }, (_, k) => wire(`W${k}`, `S${k} > cut`, 1, 1, { bundle: bundle(k) })),
	});

test("three splices at one place of a branch pass, four do not; those of other branches do not count", () => {
	expect(crowdedSplices.check(car(3, () => "floor"))).toEqual([]);
	expect(crowdedSplices.check(car(4, (k) => `branch ${k % 2}`))).toEqual([]);
	const [found, ...more] = crowdedSplices.check(car(4, () => "floor"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ severity: "note", path: ["S0", "S1", "S2", "S3"] });
	expect(found!.where).toContain("4 splices at sill, bundle floor");
});

test("splices that were there as delivered are the maker's", () => {
	const whole = car(4, () => "floor");
	expect(crowdedSplices.check(whole, whole)).toEqual([]);
	expect(
		crowdedSplices.check(
			whole,
			car(3, () => "floor"),
		),
	).toHaveLength(1);
});

test("splices joined by a wire no longer than a sleeve", () => {
	const star = (metres: number) =>
		benchCircuit({
			parts: [],
			joints: ["S0", "S1", "S2", "S3"].map((id) => joint(id)),
			wires: [1, 2, 3].map((k) => wire(`W${k}`, `S0 > S${k}`, 1, metres)),
		});
	expect(crowdedSplices.check(star(0.2))).toEqual([]);
	expect(crowdedSplices.check(star(0.04))).toHaveLength(1);
});
