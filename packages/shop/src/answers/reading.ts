/** What a meter would show. */
import { type Car, type Loom, type Question, settingsOf, takeReading, type Which } from "@loomwright/engine";
import { z } from "zod";
import { BadInput } from "./errors.js";
import { misfitSchema, misfitsOf, questionSchema, whichSchema } from "./question.js";

export const readingSchema = questionSchema.extend({
	of: whichSchema,
	value: z.number().nullable().describe("in `unit`; null: open"),
	low: z.number().nullable().describe("95 of 100 sound cars read at least this, meter included"),
	high: z.number().nullable().describe("95 of 100 sound cars read at most this, meter included"),
	unit: z.enum(["V", "A", "ohm"]),
	open: z.boolean().describe("the meter shows open"),
	how: z.string().describe("how the meter is connected"),
	grounds: z
		.array(z.object({ text: z.string(), share: z.number().describe("of the band's variance, 0 to 1") }))
		.describe("whose tolerance widens the band most"),
	misfits: z.array(misfitSchema),
});

export type ReadingAnswer = z.infer<typeof readingSchema>;

/**
 * @throws BadInput for an unknown condition; ReadingError for an unknown contact or a circuit never to be
 *   measured; CircuitError when the network does not settle
 */
export function readingAnswer(car: Car, question: Question, which: Which): ReadingAnswer {
	checkCondition(car[which], question.when);
	const { what, from, to, when, value, low, high, unit, open, how, grounds } = takeReading(
		car.circuit(which),
		question,
	);
	return {
		of: which,
		...{ what, from, to, when },
		value: value ?? null,
		low: low ?? null,
		high: high ?? null,
		...{ unit, open, how },
		grounds: grounds.map((ground) => ({ ...ground })),
		misfits: misfitsOf(car, which),
	};
}

/** @throws BadInput where a condition is neither listed nor said in place with names and states of this car */
function checkCondition(loom: Loom, when: string): void {
	try {
		settingsOf(loom, when);
	} catch (error) {
		if (!(error instanceof RangeError)) throw error;
		const problem = when.includes("=") ? error.message : `this car has no condition '${when}'`;
		const known = [...loom.conditions.keys()].join(", ");
		throw new BadInput(problem, `one of: ${known}; or said in place, such as BAT=off; X1=unmated`);
	}
}
