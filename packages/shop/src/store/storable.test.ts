import fc from "fast-check";
import { expect, test } from "vitest";
import { checkStorable } from "./storable.js";

test("whatever survives UTF-8 passes, wherever it stands; one sign that does not is found in any depth", () => {
	fc.assert(
		fc.property(
			fc.jsonValue({ stringUnit: "binary" }),
			fc.constantFrom("\0", "\ud83d", "\udfff"),
			(value, odd) => {
				const clean = JSON.parse(JSON.stringify(value).replaceAll("\\u0000", "x").replaceAll("\0", "x"));
				expect(() => checkStorable(clean)).not.toThrow();
				expect(() => checkStorable({ a: [clean, { b: `x${odd}` }] })).toThrow(/cannot be stored/);
				expect(() => checkStorable([{ [`k${odd}`]: clean }])).toThrow(/cannot be stored/);
			},
		),
		{ seed: 8, numRuns: 100 },
	);
	let deep: unknown = "\0";
	for (let n = 0; n < 20_000; n += 1) deep = [deep];
	expect(() => checkStorable(deep)).toThrow(/cannot be stored/);
});
