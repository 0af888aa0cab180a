/** What would happen if one cell of the tables were another, or a recipe step were left out. */
import {
	type Car,
	type Finding,
	type LoadSize,
	type Supposed,
	type WhatIf,
	type Which,
	type WireSize,
	whatIf,
} from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf, whichSchema } from "./question.js";
import { rulesSchema } from "./rules.js";

const findingSchema = rulesSchema.shape.findings.element.omit({ grounds: true });

const costSchema = z.object({
	minutes: z.number().describe("work of the recipe"),
	splices: z.number().int(),
	metres: z.number().describe("wire that the recipe brings"),
});

const wireSchema = z
	.object({
		mm2: z.number(),
		amps: z.number().describe("the most in any condition"),
		volts: z.number().describe("lost at the lasting current"),
		celsius: z.number().nullable().describe("null: it burns"),
		neededMm2: z.number().nullable(),
		suffices: z.boolean(),
	})
	.nullable()
	.describe("null: there is no such wire");

const fuseSchema = z
	.object({ amps: z.number(), carries: z.number().describe("A, lasting"), faults: z.array(z.string()) })
	.nullable();

const loadSchema = z
	.object({ feedVolts: z.number(), groundVolts: z.number(), suffices: z.boolean() })
	.nullable()
	.describe("null: it works in no listed condition");

const changeOf = <T extends z.ZodType>(one: T) =>
	z.array(z.object({ id: z.string(), before: one, after: one }));

export const whatIfSchema = z.object({
	of: whichSchema,
	readings: z
		.array(
			z.object({
				contact: z.string(),
				when: z.string().describe("the condition in which it moves most"),
				before: z.number().nullable().describe("V against the battery's minus; null: open"),
				after: z.number().nullable(),
				conditions: z.number().int().describe("in how many it moves by more than a meter tells"),
			}),
		)
		.describe("those that move most first"),
	findings: z.object({ come: z.array(findingSchema), gone: z.array(findingSchema) }),
	wires: changeOf(wireSchema),
	fuses: changeOf(fuseSchema),
	loads: changeOf(loadSchema),
	splices: z.array(z.string()).describe("whose barrel, sleeve or wires are others"),
	cost: z.object({ before: costSchema, after: costSchema }),
	misfits: z.array(misfitSchema).describe("of the recipe after the change"),
});

export type WhatIfAnswer = z.infer<typeof whatIfSchema>;

/**
 * @param files the tables that the car was opened from
 * @throws TableErrors where there is no such cell, or the tables are wrong with it
 */
export function whatIfAnswer(
	car: Car,
	files: Readonly<Record<string, string>>,
	supposed: Supposed,
	which: Which,
): WhatIfAnswer {
	const { readings, findings, sizes, cost, car: after } = whatIf(car, files, supposed, which);
	return {
		of: which,
		readings: readings.map(({ contact, condition, before = null, after = null, conditions }) => ({
			...{ contact, when: condition, before, after, conditions },
		})),
		findings: { come: findings.come.map(findingOf), gone: findings.gone.map(findingOf) },
		wires: sizes.wires.map(({ id, before, after }) => ({ id, before: wireOf(before), after: wireOf(after) })),
		fuses: sizes.fuses.map(({ id, before, after }) => ({ id, before: fuseOf(before), after: fuseOf(after) })),
		loads: sizes.loads.map(({ id, before, after }) => ({ id, before: loadOf(before), after: loadOf(after) })),
		splices: sizes.splices.map(({ id }) => id),
		cost,
		misfits: misfitsOf(after, which),
	};
}

const findingOf = (finding: Finding) => ({
	...finding,
	path: [...finding.path],
	cautions: [...finding.cautions],
});

function wireOf(wire: WireSize | undefined): z.infer<typeof wireSchema> {
	if (wire === undefined) return null;
	const { mm2, brief, volts, celsius, needed, suffices } = wire;
	const warm = Number.isFinite(celsius) ? celsius : null;
	return { mm2, amps: brief.amps, volts, celsius: warm, neededMm2: needed?.mm2 ?? null, suffices };
}

function fuseOf(fuse: WhatIf["sizes"]["fuses"][number]["before"]): z.infer<typeof fuseSchema> {
	return fuse ? { amps: fuse.amps, carries: fuse.steady.amps, faults: [...fuse.faults] } : null;
}

function loadOf(load: LoadSize | undefined): z.infer<typeof loadSchema> {
	return load ? { feedVolts: load.feedVolts, groundVolts: load.groundVolts, suffices: load.suffices } : null;
}
