import { readFileSync } from "node:fs";
import { parseEvidence } from "@loomwright/engine";
import {
	compareSchema,
	errorsSchema,
	findSchema,
	planSchema,
	powerSchema,
	proveSchema,
	readingSchema,
	rulesSchema,
	sizeSchema,
	transferSchema,
	whatIfSchema,
} from "@loomwright/shop";
import { expect, test } from "vitest";

/** The JSON blocks of a page of docs/, by the heading they stand under. */
function examples(page: string): Map<string, string> {
	const text = readFileSync(new URL(`../../../docs/${page}`, import.meta.url), "utf8");
	const sections = text.split(/^#+ /m).slice(1);
	return new Map(
		sections.flatMap((section) => {
			const block = /```json\n(.*?)```/s.exec(section)?.[1];
			return block === undefined ? [] : [[section.split("\n", 1)[0]!, block] as const];
		}),
	);
}

test.each([
	["Changes", compareSchema],
	["Findings", rulesSchema],
	["Sizes", sizeSchema],
	["Effects", whatIfSchema],
	["Proposal", planSchema],
	["Transfer", transferSchema],
	["Reading", readingSchema],
	["Faults", findSchema],
	["Prove sheet", proveSchema],
	["Power-up", powerSchema],
	["Errors", errorsSchema],
])("docs/json.md: the example of %s has every key and no other", (heading, schema) => {
	const example: unknown = JSON.parse(examples("json.md").get(heading)!);
	expect(schema.strict().parse(example)).toEqual(example);
});

test("docs/evidence.md: the example is evidence", () => {
	const { title, occasions } = parseEvidence(examples("evidence.md").get("Evidence")!, "docs/evidence.md");
	expect([title.length > 0, occasions.length]).toEqual([true, 2]);
});
