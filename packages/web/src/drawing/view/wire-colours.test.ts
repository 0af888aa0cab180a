import { expect, test } from "vitest";
import { strokesOf } from "./wire-colours.js";

test("the base colour runs all along, each other colour in stripes of its own", () => {
	const [base, ...stripes] = strokesOf(["BK", "WH", "RD"]);
	expect(base!.dash).toBeUndefined();
	expect(stripes).toHaveLength(2);
	expect(new Set(stripes.map(({ shift }) => shift)).size).toBe(2);
});

test("an unknown colour is a neutral grey", () => {
	expect(strokesOf([])).toEqual([{ hex: "#a0a4a8", dash: undefined, shift: 0 }]);
});
