import fc from "fast-check";
import { expect, test } from "vitest";
import { didYouMean, editDistance, nearestName } from "./nearest.js";

// Textbook pairs of the Levenshtein distance, and the swap that the restricted Damerau form adds.
test.each([
	["kitten", "sitting", 3],
	["Saturday", "Sunday", 3],
	["", "abc", 3],
	["abc", "abc", 0],
	["ab", "ba", 1],
	["ca", "abc", 3],
])("%s to %s is %i", (from, to, distance) => {
	expect(editDistance(from, to)).toBe(distance);
});

test("is symmetric, zero only for the same word, and within the words' lengths", () => {
	const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 8 });
	fc.assert(
		fc.property(word, word, (from, to) => {
			const distance = editDistance(from, to);
			expect(distance).toBe(editDistance(to, from));
			expect(distance === 0).toBe(from === to);
			expect(distance).toBeLessThanOrEqual(Math.max(from.length, to.length));
			expect(distance).toBeGreaterThanOrEqual(Math.abs(from.length - to.length));
			for (const most of [0, 1, 2, 5]) {
				const limited = editDistance(from, to, most);
				if (distance <= most) expect(limited).toBe(distance);
				else expect(limited).toBeGreaterThan(most);
			}
		}),
		{ seed: 1965 },
	);
});

test("suggests the nearest name, and none where nothing is near", () => {
	const names = ["ECU.A1", "ECU.A12", "K1.87"];
	expect(nearestName("ecu.a12", names)).toBe("ECU.A12");
	expect(nearestName("ECU.A21", names)).toBe("ECU.A12");
	expect(nearestName("BATTERY", names)).toBeUndefined();
	expect(didYouMean("K1.78", names, "a contact")).toBe("K1.87, perhaps; a contact");
	expect(didYouMean("zz", names, "a contact")).toBe("a contact");
});
