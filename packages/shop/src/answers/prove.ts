/** The sheet of readings before power, what was read held against it, and what that speaks for. */
import {
	type Car,
	type Evidence,
	evidenceSchema,
	judge,
	type Miss,
	type ProveSheet,
	type SheetEntry,
	type SheetPart,
	type SheetRow,
	toEvidence,
} from "@loomwright/engine";
import { z } from "zod";
import { type FindAnswer, findAnswer, findSchema } from "./find.js";
import { misfitSchema, misfitsOf, questionSchema } from "./question.js";

const shown = z.union([z.number(), z.literal("open")]);

const rowSchema = z.object({
	number: z.number().int().describe("on the sheet, from 1, in walking order"),
	question: questionSchema,
	from: z.string().describe("first point in words"),
	to: z.string(),
	place: z.string().describe("of the first point"),
	toPlace: z.string(),
	value: z.number().nullable().describe("ohms on a sound car; null: open"),
	low: z.number().describe("passes from here on"),
	high: z.number().nullable().describe("passes up to here; null: no limit, the reading is open"),
	unit: z.literal("ohm"),
	catches: z.array(z.string()).describe("ids of the faults that it would show"),
	cautions: z.array(z.string()),
});

export const proveSchema = z.object({
	of: z.literal("converted"),
	leastOhms: z.number().describe("added resistance from which on a poor connection is to be caught"),
	readings: z.number().int(),
	lowerBound: z.number().int().describe("no fewer of the offered readings could do the same"),
	offered: z.number().int(),
	placeChanges: z.number().int().describe("times that a lead is carried to another place"),
	coverage: z.object({
		faults: z.number().int().describe("single faults considered"),
		detectable: z.number().int().describe("of these, shown by some offered reading"),
		caught: z.number().int().describe("of these, shown by the sheet"),
	}),
	parts: z
		.array(
			z.object({
				when: z.string().describe("condition"),
				title: z.string(),
				prepare: z.array(z.string()),
				cautions: z.array(z.string()),
				rows: z.array(rowSchema),
			}),
		)
		.describe("rows taken with the car standing one way"),
	missed: z.array(
		z.object({
			id: z.string(),
			kind: z.string(),
			where: z.string(),
			reason: z.string(),
			why: z.string(),
			only: z.array(z.string()).describe("contacts that are missed; empty: the whole fault"),
			caughtFrom: z.number().nullable().describe("ohms from which on it is caught after all; null: never"),
		}),
	),
	judged: z.array(z.object({ row: z.number().int(), value: shown, passes: z.boolean(), text: z.string() })),
	evidence: evidenceSchema.nullable().describe("what was read, as finding takes it; null: nothing was read"),
	found: findSchema.nullable().describe("what a wrong reading speaks for; null: none is wrong"),
	misfits: z.array(misfitSchema),
});

export type ProveAnswer = z.infer<typeof proveSchema>;

/**
 * @param entries what was read on that sheet
 * @param find answers of the evidence that they make
 * @throws CircuitError when the network does not settle
 */
export function proveAnswer(
	car: Car,
	sheet: ProveSheet,
	entries: readonly SheetEntry[],
	find: (evidence: Evidence) => FindAnswer = (evidence) => findAnswer(car, evidence),
): ProveAnswer {
	const verdicts = judge(sheet, entries);
	const evidence = entries.length === 0 ? null : toEvidence(sheet, entries);
	// A row that was read once more counts as it was read last.
	const last = new Map(verdicts.map(({ row, passes }) => [row.number, passes]));
	const wrong = [...last.values()].includes(false);
	const { leastOhms, readings, lowerBound, offered, placeChanges, coverage, parts, missed } = sheet;
	return {
		of: "converted",
		...{ leastOhms, readings, lowerBound, offered, placeChanges },
		coverage: { ...coverage },
		parts: parts.map(partOf),
		missed: missed.map(missOf),
		judged: verdicts.map(({ row, value, passes, text }) => ({ row: row.number, value, passes, text })),
		evidence: evidence && evidenceSchema.parse(evidence),
		found: evidence && wrong ? find(evidence) : null,
		misfits: misfitsOf(car, "converted"),
	};
}

function partOf({ when, title, prepare, cautions, rows }: SheetPart): ProveAnswer["parts"][number] {
	return { when, title, prepare: [...prepare], cautions: [...cautions], rows: rows.map(rowOf) };
}

function rowOf(row: SheetRow): ProveAnswer["parts"][number]["rows"][number] {
	const { number, question, from, to, place, toPlace, value, low, high, catches, cautions } = row;
	return {
		number,
		question: { ...question },
		...{ from, to, place, toPlace, value: value ?? null, low, high: high ?? null, unit: "ohm" },
		catches: [...catches],
		cautions: [...cautions],
	};
}

function missOf({ id, kind, where, reason, why, only, caughtFrom }: Miss): ProveAnswer["missed"][number] {
	return { id, kind, where, reason, why, only: [...only], caughtFrom: caughtFrom ?? null };
}
