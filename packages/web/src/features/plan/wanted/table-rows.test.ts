import { expect, test } from "vitest";
import { rowsOf, withRow } from "./table-rows.js";

const text = 'target,from,to\none,A.1,ground\n\n"two, too",A.2,B.1\n';

test("rows by column; empty ones are none", () => {
	expect(rowsOf(text)).toEqual([
		{ target: "one", from: "A.1", to: "ground" },
		{ target: "two, too", from: "A.2", to: "B.1" },
	]);
	expect(rowsOf("")).toEqual([]);
});

test("a row changed, added with a column more, taken away", () => {
	const first = rowsOf(text)[0]!;
	expect(withRow(text, 0, { ...first, to: "G1" })).toBe('target,from,to\none,A.1,G1\n"two, too",A.2,B.1\n');
	const longer = withRow(text, 2, { target: "three", size: "0.5", note: "" });
	expect(longer).toBe('target,from,to,size\none,A.1,ground,\n"two, too",A.2,B.1,\nthree,,,0.5\n');
	expect(withRow(text, 1, undefined)).toBe("target,from,to\none,A.1,ground\n");
	expect(withRow("", 0, { target: "first", size: "" })).toBe("target\nfirst\n");
});
