import { describe, expect, test } from "vitest";
import { operate, probeValue } from "../circuit/index.js";
import { faultsOf } from "../faults/index.js";
import { findFaults, parseEvidence } from "../find/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { judge, limitsText, type SheetEntry, toEvidence } from "./judge.js";
import { proveSheet } from "./sheet.js";

const car = demoCar("small");
const sheet = proveSheet(car);
const rows = sheet.parts.flatMap((part) => part.rows);
const number = rows.find((row) => row.value !== undefined)!;
const open = rows.find((row) => row.value === undefined)!;
const ask = (row: { number: number }, value: number | "open") =>
	judge(sheet, [{ row: row.number, value }])[0]!;

describe("judging", () => {
	test("inside the limits passes, outside fails", () => {
		expect(ask(number, number.value!).passes).toBe(true);
		expect(ask(number, number.high!).passes).toBe(true);
		expect(ask(number, number.high! * 1.01).passes).toBe(false);
		expect(ask(number, "open").passes).toBe(false);
	});

	test("an open reading passes open or with megohms", () => {
		expect(ask(open, "open").passes).toBe(true);
		expect(ask(open, 3e6).passes).toBe(true);
		expect(ask(open, 1000).passes).toBe(false);
	});

	test("says what was wanted", () => {
		expect(ask(open, 12.345).text).toBe("12.3 ohm: not right, wanted open");
		expect(limitsText({ value: 0.2, low: 0.094, high: 0.31 })).toBe("0.09 to 0.31 ohm");
		expect(ask(number, "open").text).toBe(`open: not right, wanted ${limitsText(number)}`);
	});

	test.each([
		[{ row: 999, value: 1 }, /no row 999; the sheet has rows 1 to/],
		[{ row: 1, value: -1 }, /row 1: '-1' is no reading; ohms from 0 on, or open/],
		[{ row: 1, value: Number.NaN }, /no reading/],
	])("%j is refused", (entry: SheetEntry, message) => {
		expect(() => judge(sheet, [entry])).toThrow(message);
		expect(() => toEvidence(sheet, [entry])).toThrow(message);
	});
});

describe("on to finding", () => {
	const all = (change: Parameters<typeof operate>[2]) => {
		const { circuit } = faultsOf(car, "converted", true);
		return rows.map(({ number: row, question }): SheetEntry => {
			const point = operate(circuit, circuit.standing(question.when), { ...change, dead: true });
			const [a, b] = [circuit.node(question.from)!, circuit.node(question.to)!];
			const ohms = probeValue(point, { kind: "ohms", a, b });
			return { row, value: Number.isNaN(ohms) || ohms > 4e7 ? "open" : ohms };
		});
	};

	test("entries are evidence, one occasion for each part that has any", () => {
		const evidence = toEvidence(sheet, all({}));
		expect(evidence.occasions).toHaveLength(sheet.parts.length);
		const text = JSON.stringify(evidence);
		expect(parseEvidence(text, "sheet").occasions.map((o) => o.readings)).toEqual(
			evidence.occasions.map((o) => o.readings),
		);
		expect(toEvidence(sheet, []).occasions).toEqual([]);
	});

	const { faults } = faultsOf(car, "converted", true);
	const kinds = ["open", "short to ground", "short to neighbour", "fuse blown", "device dead"];
	const planted = kinds.map(
		(kind) => faults.find((f) => f.kind === kind && rows.some((r) => r.catches.includes(f.id)))!,
	);

	test.each(planted.map((fault) => [fault.id, fault] as const))(
		"%s fails its rows and is found",
		(id, fault) => {
			const entries = all({ change: fault.patterns[0]!.change });
			const failed = judge(sheet, entries).filter((verdict) => !verdict.passes);
			expect(failed.some(({ row }) => row.catches.includes(id))).toBe(true);
			const ranked = findFaults(car, toEvidence(sheet, entries)).faults;
			const [first] = ranked;
			const own = ranked.find((r) => r.id === id);
			// Others may read the very same; the planted one is among the likely.
			expect(own, first?.id).toBeDefined();
			expect(own!.posterior).toBeGreaterThan(first!.posterior * 1e-4);
		},
	);
});
