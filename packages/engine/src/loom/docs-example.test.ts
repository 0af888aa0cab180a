import { expect, test } from "vitest";
import { formatTableError } from "../tables/index.js";
import { documentBlocks, exampleTables } from "./example.test-helper.js";
import { readTables } from "./read-tables.js";

test("the worked example of docs/tables.md reads without error", () => {
	const { delivered, errors } = readTables(exampleTables(), "example");
	expect(errors.map(formatTableError)).toEqual([]);
	expect(delivered.name).toBe("example");
	expect(delivered.parts.get("K1")!.values).toEqual({ coil_ohms: 85 });
	expect(delivered.parts.get("S1")!.positions).toEqual([
		{ name: "off", joins: [] },
		{ name: "run", joins: [["30", "15"]] },
	]);
	expect(delivered.wires.get("W5")).toMatchObject({
		from: { at: "contact", contact: "K1.85" },
		mm2: 0.5,
		colours: ["BN", "BU"],
		metres: 0.9,
	});
	expect(delivered.joints.get("G1")).toMatchObject({ kind: "ground", metal: "body", ohms: undefined });
	expect([...delivered.conditions.get("lit")!.settings]).toEqual([["ECU.3", "on"]]);
	expect(delivered.conditions.get("lit")!.like).toBe("on");
	expect([...delivered.wires.keys()]).toEqual(Array.from({ length: 16 }, (_, i) => `W${i + 1}`));
});

const MISTAKES = documentBlocks().flatMap((block, at, all) =>
	block.title.endsWith("mistakes")
		? [{ title: block.title, text: block.text, errors: all[at + 1]!.text }]
		: [],
);

test.each(MISTAKES)("the errors of $title are those of docs/tables.md", ({ text, errors }) => {
	const result = readTables({ ...exampleTables(), "wires.csv": text });
	expect(result.errors.map((error) => `${formatTableError(error)}\n`).join("")).toBe(errors);
});

test("both examples with mistakes are there", () => {
	expect(MISTAKES).toHaveLength(2);
});
