/** The shop's own repairs change the ranking of a finder that is in use, and taken back leave it as it was. */
import { expect, test } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { Finder } from "./find.js";
import { parseEvidence } from "./parse-evidence.js";

const finder = new Finder(demoCar("small"), "converted");
const evidence = parseEvidence('{"occasions": [{"codes": ["B1A02"]}]}', "");
const chanceOf = (kind: string) =>
	finder.find(evidence).faults.reduce((sum, fault) => sum + (fault.kind === kind ? fault.posterior : 0), 0);

test("a kind that the shop has met often is ranked higher, until the repairs are taken back", () => {
	const before = finder.find(evidence);
	const { kind, singles } = before.faults[1]!;
	const touched = singles[0]!.steps.length > 0;
	const repairs = Array.from({ length: 9 }, () => ({ kind, touched, person: "" }));
	const was = chanceOf(kind);
	finder.count({ cars: 9, repairs, work: [] }, new Map());
	expect(finder.rates.kinds.find((rate) => rate.kind === kind && rate.touched === touched)?.found).toBe(9);
	expect(chanceOf(kind)).toBeGreaterThan(1.2 * was);
	finder.count({ cars: 0, repairs: [], work: [] }, new Map());
	expect(finder.find(evidence)).toEqual(before);
});

test("a ranked fault names what it is made of; a pair both", () => {
	const { faults } = finder.find(
		parseEvidence('{"occasions": [{"codes": ["B1A02"], "functions": {"work-lamps": false}}]}', ""),
	);
	for (const { id, singles, kind } of faults) {
		expect(singles.map((one) => one.id).join(" & ")).toBe(id);
		if (kind !== "two faults") expect(singles[0]).toMatchObject({ kind });
	}
	expect(faults.some(({ singles }) => singles.length === 2)).toBe(true);
});
