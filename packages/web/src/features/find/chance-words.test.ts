import { expect, test } from "vitest";
import { chanceWords, timesFactor } from "./chance-words.js";

test.each([
	[0.5, "50 %"],
	[0.003, "1 in 330"],
	[1e-6, "1 in 1,000,000"],
	[0, "none"],
])("a chance of %s is %s", (chance, words) => {
	expect(chanceWords(chance)).toBe(words);
});

test("factors", () => {
	expect([2.345, 0.333, 1.001].map(timesFactor)).toEqual(["2.3 times", "0.33 times", "the same"]);
});
