/** A recipe taken to another car of the kind: what can be done there as it is, what must be decided, what cannot. */
import {
	type Car,
	compareLooms,
	draftFiles,
	TRANSFER_REASONS,
	TRANSFER_VERDICTS,
	travel,
} from "@loomwright/engine";
import { z } from "zod";
import { changeSchema, changesOf } from "./compare.js";

export const transferSchema = z.object({
	counts: z.object({
		applies: z.number().int(),
		decide: z
			.number()
			.int()
			.describe("can be done, but something is not as in the car the recipe was made for"),
		"not here": z.number().int(),
	}),
	steps: z.array(
		z.object({
			step: z.string(),
			kind: z.string(),
			title: z.string(),
			place: z.string(),
			verdict: z.enum(TRANSFER_VERDICTS),
			reasons: z.array(
				z.object({
					kind: z.enum(TRANSFER_REASONS),
					subject: z.string().describe("by its name in the recipe"),
					was: z.string().describe("in the car the recipe was made for"),
					is: z.string().describe("in the other car"),
					text: z.string(),
				}),
			),
		}),
	),
	left: z.array(z.string()).describe("wires that are left with a bare end in the other car"),
	files: z
		.record(z.string(), z.string())
		.describe(
			"tables of a draft for the other car: the steps that can be done there, what to decide in their notes",
		),
	differences: z.array(changeSchema).describe("of the two cars as delivered"),
});

export type TransferAnswer = z.infer<typeof transferSchema>;

/**
 * @param car the one the recipe was made for
 * @param other another car of its kind
 */
export function transferAnswer(car: Car, other: Car): TransferAnswer {
	const journey = travel(car.tables, other.tables.delivered);
	const { steps, left } = journey;
	const count = (verdict: (typeof TRANSFER_VERDICTS)[number]) =>
		steps.filter((one) => one.verdict === verdict).length;
	return {
		counts: { applies: count("applies"), decide: count("decide"), "not here": count("not here") },
		steps: steps.map(({ step: { step, kind, title, place }, verdict, reasons }) => ({
			step,
			kind,
			title,
			place,
			verdict,
			reasons: reasons.map((one) => ({ ...one })),
		})),
		left: [...left],
		files: { ...draftFiles(car.tables, journey, other.tables.delivered) },
		differences: changesOf(compareLooms(car.delivered, other.delivered)),
	};
}
