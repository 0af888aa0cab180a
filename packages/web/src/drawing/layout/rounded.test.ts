import { expect, test } from "vitest";
import { rounded } from "./rounded.js";

test("corners are rounded, never by more than half of a stretch", () => {
	const corner = [
		{ x: 0, y: 0 },
		{ x: 0, y: 10 },
		{ x: 30, y: 10 },
	];
	expect(rounded(corner, 4)).toBe("M0 0L0 6Q0 10 4 10L30 10");
	expect(rounded(corner, 50)).toBe("M0 0L0 5Q0 10 5 10L30 10");
});

test("nothing gives nothing", () => expect(rounded([], 4)).toBe(""));
