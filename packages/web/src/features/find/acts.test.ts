import type { Evidence } from "@loomwright/engine";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Act, actsOf, evidenceOf } from "./acts.js";

const reading = { what: "volts", from: "A.1", to: "body", when: "key-on", value: 12 } as const;

test("nothing seen is no evidence", () => {
	expect(evidenceOf([], "converted", "")).toBeUndefined();
	expect(evidenceOf([{ kind: "occasion", body: { note: "towed in" } }], "converted", "")).toBeUndefined();
});

test("reseating a connector begins a new occasion, for what is seen after it", () => {
	const acts: Act[] = [
		{ kind: "codes", body: { codes: ["P0117"], units: [] } },
		{ kind: "reading", body: reading },
		{ kind: "reseated", body: { what: "X1" } },
		{ kind: "codes", body: { codes: [], units: ["ECU"] } },
	];
	const evidence = evidenceOf(acts, "delivered", "t")!;
	expect(evidence).toMatchObject({ title: "t", of: "delivered" });
	expect(evidence.occasions).toMatchObject([
		{ codes: ["P0117"], readings: [reading], reseated: "" },
		{ codes: [], units: ["ECU"], readings: [], reseated: "X1" },
	]);
});

test("codes read again on the same occasion take the place of the first", () => {
	const read = (codes: string[]): Act => ({ kind: "codes", body: { codes, units: [] } });
	expect(evidenceOf([read(["A"]), read(["B"])], "converted", "")!.occasions).toMatchObject([
		{ codes: ["B"] },
	]);
});

const name = fc.constantFrom("A.1", "B.2", "C.3");
const record = fc.dictionary(name, fc.boolean(), { maxKeys: 3 });
const occasion = fc.record({
	note: fc.constantFrom("", "next day"),
	reseated: fc.constantFrom("", "X1", "X2"),
	codes: fc.option(fc.uniqueArray(name), { nil: undefined }),
	units: fc.constant([] as string[]),
	functions: record,
	readings: fc.array(fc.constant(reading), { maxLength: 2 }),
	bench: record,
});
type Part = Evidence["occasions"][number];
const saysNothing = (o: Part) =>
	o.codes === undefined &&
	o.readings.length === 0 &&
	Object.keys({ ...o.functions, ...o.bench }).length === 0;

test("a case taken apart into acts adds up to the same case", () => {
	fc.assert(
		fc.property(fc.array(occasion, { minLength: 1, maxLength: 4 }), (occasions) => {
			fc.pre(!occasions.some(saysNothing));
			const evidence: Evidence = { title: "case", of: "converted", occasions };
			expect(evidenceOf(actsOf(evidence), "converted", "case")).toEqual(evidence);
		}),
		{ seed: 5, numRuns: 300 },
	);
});
