/** Which faults the evidence speaks for, and what to do next. */
import {
	type Car,
	type Evidence,
	finderOf,
	type NextStep,
	type Question,
	type ShopRecord,
} from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf, questionSchema, whichSchema } from "./question.js";

const chance = z.number().min(0).max(1);

const nextSchema = z.object({
	question: questionSchema,
	text: z.string().describe("the step in words"),
	bits: z.number().describe("expected information"),
	minutes: z.number(),
	because: z.string(),
	outcomes: z.array(z.object({ text: z.string(), chance, favours: z.string() })),
	cautions: z.array(z.string()),
	again: z
		.boolean()
		.describe("it was taken before and does not fit: taken once more, it is entered as a new occasion"),
});

export const findSchema = z.object({
	of: whichSchema,
	title: z.string(),
	faults: z
		.array(
			z.object({
				id: z.string(),
				kind: z.string(),
				where: z.string(),
				place: z.string(),
				posterior: chance.describe("all faults and the sound loom sum to 1"),
				grounds: z.array(
					z.object({
						text: z.string(),
						times: z.number().describe("as likely under this fault as on a sound car"),
					}),
				),
				alike: z.array(z.string()).describe("ids of faults that nothing measured can tell from it"),
				path: z.array(z.string()),
				mend: z.string(),
				singles: z
					.array(
						z.object({
							id: z.string(),
							kind: z.string(),
							where: z.string(),
							steps: z
								.array(z.string())
								.describe("of the recipe that worked on it; empty: no hand was on it"),
						}),
					)
					.describe("itself; of two faults at once, both"),
			}),
		)
		.describe("most probable first"),
	sound: chance.describe("that the loom is sound"),
	settled: z.boolean().describe("nothing more need be measured"),
	bits: z.number().describe("what readings could still tell: at yes or no each, so many to go"),
	next: nextSchema.nullable().describe("the step worth most; null: none is worth taking"),
	others: z.array(nextSchema),
	actions: z.array(
		z.object({
			kind: z.enum(["reseat", "wiggle", "swap"]),
			part: z.string().describe("connector, relay or fuse to reseat; connector to wiggle; relay to swap"),
			text: z.string(),
			bits: z.number(),
			minutes: z.number(),
			because: z.string(),
			place: z.string(),
		}),
	),
	contradictions: z.array(z.string()),
	repeat: z
		.array(
			z.object({
				text: z.string(),
				occasion: z.number().int().describe("number of the occasion it stands in, from 0"),
				entry: z.discriminatedUnion("kind", [
					z.object({ kind: z.literal("code"), code: z.string() }),
					z.object({ kind: z.literal("unit"), unit: z.string() }),
					z.object({ kind: z.literal("function"), function: z.string() }),
					z.object({ kind: z.literal("reading"), question: questionSchema }),
					z.object({ kind: z.literal("bench"), part: z.string() }),
				]),
			}),
		)
		.describe("entries that do not fit the leading fault, to be looked at once more"),
	considered: z.object({ singles: z.number(), common: z.number(), pairs: z.number() }),
	misfits: z.array(misfitSchema),
});

export type FindAnswer = z.infer<typeof findSchema>;

/** Sums of shares may miss 0 and 1 by a rounding. */
const share = (value: number): number => Math.min(1, Math.max(0, value));

/** JSON has no infinity: the largest number stands for it. */
const finite = (value: number): number => Math.min(value, Number.MAX_VALUE);

/** What the shop knows besides the car. */
export interface Known {
	/** Its own repairs, counted into the chances. */
	readonly record: ShopRecord;
	/** Who did each step of the recipe on this car, by the step's name. */
	readonly doneBy: ReadonlyMap<string, string>;
}

/** @throws CircuitError when the network does not settle */
export function findAnswer(car: Car, evidence: Evidence, known?: Known): FindAnswer {
	const finder = finderOf(car, evidence);
	if (known) finder.count(known.record, known.doneBy);
	const found = finder.find(evidence);
	return {
		of: evidence.of,
		title: evidence.title,
		faults: found.faults.map(
			({ id, kind, where, place, posterior, grounds, alike, path, mend, singles }) => ({
				...{ id, kind, where, place, posterior: share(posterior) },
				grounds: grounds.map(({ text, times }) => ({ text, times: finite(times) })),
				...{ alike: [...alike], path: [...path], mend },
				singles: singles.map(({ steps, ...single }) => ({ ...single, steps: [...steps] })),
			}),
		),
		sound: share(found.sound),
		settled: found.settled,
		bits: Math.max(0, found.bits),
		next: found.next ? nextStep(found.next) : null,
		others: found.others.map(nextStep),
		actions: found.actions.map((action) => ({ ...action })),
		contradictions: [...found.contradictions],
		repeat: found.repeat.map(({ text, occasion, entry }) => ({
			...{ text, occasion },
			entry: entry.kind === "reading" ? { ...entry, question: plain(entry.question) } : { ...entry },
		})),
		considered: { ...found.considered },
		misfits: misfitsOf(car, evidence.of),
	};
}

const plain = ({ what, from, to, when }: Question): Question => ({ what, from, to, when });

function nextStep(step: NextStep): z.infer<typeof nextSchema> {
	const { question, text, bits, minutes, because, outcomes, cautions, again } = step;
	return {
		question: plain(question),
		...{ text, bits, minutes, because },
		outcomes: outcomes.map(({ text, chance, favours }) => ({ text, chance: share(chance), favours })),
		cautions: [...cautions],
		again,
	};
}
