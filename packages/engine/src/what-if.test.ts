import { describe, expect, test } from "vitest";
import { TableErrors } from "./tables/index.js";
import { demoCar, demoFiles } from "./test-support/demo.test-helper.js";
import { type Supposed, whatIf } from "./what-if.js";

const small = (supposed: Supposed) => whatIf(demoCar("small"), demoFiles("small"), supposed);

function wrong(supposed: Supposed) {
	try {
		small(supposed);
	} catch (error) {
		if (error instanceof TableErrors) return error.errors[0];
	}
	return undefined;
}

test("a wire's size, in a table or in a recipe step", () => {
	const { findings, sizes, car } = small({ table: "wires", row: "W3", column: "size", cell: "0.22" });
	expect(car.converted.wires.get("W3")!.mm2).toBe(0.22);
	expect(findings.come.map((finding) => finding.rule)).toContain("fuse-too-large");
	expect(sizes.wires.find((wire) => wire.id === "W3")!.after!.suffices).toBe(false);
});

test("the cell as it is moves nothing", () => {
	const { readings, findings, sizes, cost } = small({ table: "wires", row: "W3", column: "size", cell: "1" });
	expect([readings, findings, sizes.wires]).toEqual([[], { come: [], gone: [] }, []]);
	expect(cost.after).toEqual(cost.before);
});

test("a column that the table does not have yet", () => {
	const { car } = small({ table: "joints", row: "SP1", column: "ohms", cell: "0.05" });
	expect(car.converted.joints.get("SP1")!.ohms).toBe(0.05);
});

test("the step that makes the tie of the sensor returns left out", () => {
	const main = whatIf(demoCar("main"), demoFiles("main"), { without: "37" });
	expect(main.findings.come.map((finding) => finding.rule)).toContain("sensor-return");
	expect(main.readings.find((reading) => reading.contact === "ECU.B28")).toMatchObject({
		conditions: expect.any(Number),
	});
	expect(main.cost.before.minutes - main.cost.after.minutes).toBe(15);
	expect(main.cost.before.metres - main.cost.after.metres).toBeCloseTo(0.7, 9);
});

describe("what is not there is told, with what would be right", () => {
	test.each<[Supposed, string, string]>([
		[{ table: "wires", row: "W33", column: "size", cell: "1" }, "wires.csv", 'there is no row "W33"'],
		[
			{ table: "wires", row: "W3", column: "sise", cell: "1" },
			"wires.csv",
			'there is no column "sise" in this table',
		],
		[{ table: "wires", row: "W3", column: "size", cell: "thick" }, "wires.csv", '"thick" is not a wire size'],
		[{ without: "99" }, "recipe.csv", 'there is no step "99"'],
	])("%o", (supposed, file, problem) => {
		expect(wrong(supposed)).toMatchObject({ file, problem, wanted: expect.stringMatching(/./) });
	});
});
