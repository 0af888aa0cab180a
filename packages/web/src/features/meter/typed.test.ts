import fc from "fast-check";
import { expect, test } from "vitest";
import { parseShown } from "../../shared/parse-shown.js";
import { typed } from "./typed.js";

const all = (keys: string) => [...keys].reduce(typed, "");

test("keys make a number; a second point and a tenth figure are passed over", () => {
	expect(all("87.4")).toBe("87.4");
	expect(all("8.7.4")).toBe("8.74");
	expect(all("12⌫3")).toBe("13");
	expect(all("05±")).toBe("-05");
	expect(all("05±±")).toBe("05");
	expect(all("123456789123").length).toBe(9);
});

test("whatever is typed is a number once it holds a figure", () => {
	const keys = fc.array(fc.constantFrom(..."0123456789.±⌫"), { maxLength: 20 });
	fc.assert(
		fc.property(keys, (pressed) => {
			const text = pressed.reduce(typed, "");
			expect(parseShown(text) !== undefined).toBe(/\d/.test(text));
		}),
		{ seed: 7 },
	);
});
