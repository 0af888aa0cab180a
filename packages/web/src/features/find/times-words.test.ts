import { expect, test } from "vitest";
import { timesWords } from "./times-words.js";

test("for, against and neither", () => {
	expect([12.4, 0.25, 1.01, 1e9, 0].map(timesWords)).toEqual([
		"speaks for it, 12 times",
		"speaks against it, 4.0 times",
		"speaks neither for nor against",
		"speaks for it, more than 1000 times",
		"speaks strongly against it",
	]);
});
