import { expect, test } from "vitest";
import { parseShown } from "./parse-shown.js";

test("point, comma and any minus are read", () => {
	expect(["12.4", " 0,35 ", "-2", "−0.5", "+7.", ".5"].map(parseShown)).toEqual([
		12.4, 0.35, -2, -0.5, 7, 0.5,
	]);
});

test("anything else is no number", () => {
	for (const text of ["", "OL", "1e3", "1.2.3", "12 V", "-", "1,2,3"])
		expect(parseShown(text)).toBeUndefined();
});
