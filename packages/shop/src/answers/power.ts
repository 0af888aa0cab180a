/** The staged power-up. */
import { type Car, powerUp, type Stage, type StageReading } from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf, questionSchema } from "./question.js";

const readingSchema = z.object({
	question: questionSchema
		.nullable()
		.describe("as finding takes it; null: with the test lamp in the line, which no condition says"),
	from: z.string().describe("first point in words"),
	to: z.string(),
	place: z.string().describe("of the first point"),
	value: z.number().nullable().describe("in `unit`, on a sound car; null: nothing joins the two points"),
	low: z.number().describe("passes from here on"),
	high: z.number().nullable().describe("passes up to here; null: no limit"),
	unit: z.enum(["V", "A", "ohm"]),
});

export const powerSchema = z.object({
	of: z.literal("converted"),
	stages: z.array(
		z.object({
			number: z.number().int().describe("from 0"),
			kind: z.string(),
			title: z.string(),
			connect: z.array(z.string()).describe("what is done, in order"),
			read: z.array(readingSchema),
			mustBeTrue: z.array(z.string()).describe("besides the readings, before going on"),
			live: z.array(z.string()).describe("parts that become live"),
			safe: z.array(z.string()).describe("what may be counted on"),
			cautions: z.array(z.string()),
		}),
	),
	misfits: z.array(misfitSchema),
});

export type PowerAnswer = z.infer<typeof powerSchema>;

/** @throws CircuitError when the network does not settle with every fuse out */
export function powerAnswer(car: Car): PowerAnswer {
	return { of: "converted", stages: powerUp(car).map(stageOf), misfits: misfitsOf(car, "converted") };
}

function stageOf(stage: Stage): PowerAnswer["stages"][number] {
	const { number, kind, title, connect, read, mustBeTrue, live, safe, cautions } = stage;
	return {
		...{ number, kind, title, connect: [...connect] },
		read: read.map(readingOf),
		...{ mustBeTrue: [...mustBeTrue], live: [...live], safe: [...safe], cautions: [...cautions] },
	};
}

function readingOf(reading: StageReading): z.infer<typeof readingSchema> {
	const { question, from, to, place, value, low, high, unit } = reading;
	return {
		question: question ? { ...question } : null,
		...{ from, to, place, value: value ?? null, low, high: high ?? null, unit },
	};
}
