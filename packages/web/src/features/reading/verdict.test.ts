import { expect, test } from "vitest";
import { verdict } from "./verdict.js";

const band = { low: 11.8, high: 12.4, open: false };

test("inside the band, its ends included, is as on a sound car", () => {
	for (const shown of [11.8, 12, 12.4]) expect(verdict(band, shown).inside).toBe(true);
});

test("outside it is said on which side", () => {
	expect(verdict(band, 11.79)).toMatchObject({ inside: false, words: expect.stringContaining("below") });
	expect(verdict(band, 13)).toMatchObject({ inside: false, words: expect.stringContaining("above") });
});

test("open where a value belongs is a fault, and so is a value where open belongs", () => {
	const open = { low: undefined, high: undefined, open: true };
	expect([verdict(band, "open"), verdict(open, 0.3), verdict(open, "open")].map((v) => v.inside)).toEqual([
		false,
		false,
		true,
	]);
});
