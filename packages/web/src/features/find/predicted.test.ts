import { expect, test } from "vitest";
import { type Predicted, showsWords, telling } from "./predicted.js";

const predicted = (sound: string, ...shows: readonly (readonly [string, number])[]): Predicted => ({
	question: { what: "volts", from: "A", to: "B", when: "key-on" },
	value: undefined,
	shows: shows.map(([text, chance]) => ({ text, chance })),
	sound,
});

test("ways of showing in words, rare ones left out", () => {
	expect(showsWords(predicted("0 V", ["about 5 V", 1]))).toBe("about 5 V");
	expect(showsWords(predicted("0 V", ["about 5 V", 0.97], ["open", 0.03]))).toBe("about 5 V");
	expect(showsWords(predicted("0 V", ["open", 0.8], ["about 5 V", 0.2]))).toBe(
		"open (80 %) or about 5 V (20 %)",
	);
});

test("what tells a fault from a sound car", () => {
	const [same, other, half] = [
		predicted("about 5 V", ["about 5 V", 1]),
		predicted("about 5 V", ["open", 1]),
		predicted("about 5 V", ["about 5 V", 0.5], ["open", 0.5]),
	];
	expect(telling([same, other, half])).toEqual([other, half]);
});
