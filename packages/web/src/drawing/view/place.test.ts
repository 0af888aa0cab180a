import fc from "fast-check";
import { expect, test } from "vitest";
import { fit, scaledAbout, start } from "./place.js";

const px = fc.double({ min: -2000, max: 2000, noNaN: true });

test("the point under the fingers stays where it is", () => {
	fc.assert(
		fc.property(px, px, px, px, fc.double({ min: 0.3, max: 3, noNaN: true }), (x, y, ax, ay, by) => {
			const before = { x, y, scale: 0.8 };
			const after = scaledAbout(before, by, { x: ax, y: ay });
			expect((ax - after.x) / after.scale).toBeCloseTo((ax - x) / before.scale, 6);
			expect((ay - after.y) / after.scale).toBeCloseTo((ay - y) / before.scale, 6);
		}),
		{ seed: 1, numRuns: 200 },
	);
});

test("a small drawing is shown whole and in the middle, a large one from its top", () => {
	expect(fit({ width: 1000, height: 500 }, { width: 500, height: 500 })).toEqual({ scale: 1, x: 250, y: 0 });
	expect(start({ width: 1000, height: 500 }, { width: 500, height: 500 }).scale).toBe(1);
	const [frame, sheet] = [
		{ width: 400, height: 400 },
		{ width: 500, height: 4000 },
	];
	expect(start(frame, sheet)).toEqual({ scale: 0.8, x: 0, y: 0 });
	expect(fit(frame, sheet).scale).toBe(0.1);
});
