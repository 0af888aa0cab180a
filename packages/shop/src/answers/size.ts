/** What each wire, fuse, load and splice carries, and whether it is made for it. */
import {
	type Car,
	type EndSize,
	type FuseSize,
	type Peak,
	SIZE_SOURCES,
	type SpliceSize,
	sizeCircuits,
	type Which,
	type WireSize,
} from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf, whichSchema } from "./question.js";

const peakSchema = z.object({
	amps: z.number(),
	when: z.string().describe("condition; empty: it carries nothing in any"),
});

const sourcedSchema = z
	.object({ value: z.number(), source: z.string().describe("table and row of reference/") })
	.nullable();

const endSchema = z.object({
	at: z.string().describe("contact, ground point or bar"),
	terminal: z.string(),
	stripMm: sourcedSchema,
	pullNewtons: sourcedSchema.describe("pull that the crimp must stand, metric sizes"),
	pullNewtonsAwg: sourcedSchema.describe("the same for American gauges"),
	sealMm: sourcedSchema.describe("outside diameter that the seal must fit; null: no seal"),
});

const wireSchema = z.object({
	wire: z.string(),
	circuit: z.string(),
	bundle: z.string(),
	mm2: z.number(),
	awg: z.string().describe("nearest gauge"),
	metres: z.number(),
	worked: z.boolean().describe("the recipe makes it or works on it"),
	steady: peakSchema.describe("lasting current, starter at rest"),
	brief: peakSchema.describe("cranking included"),
	rush: peakSchema.describe("all its lamps switched on cold"),
	start: peakSchema.describe("all its motors started"),
	volts: z.number().describe("lost in the warm conductor at the lasting current"),
	loaded: z.number().int().describe("wires in its bundle that carry current, itself included"),
	celsius: z.number().nullable().describe("of the conductor at the lasting current; null: it burns"),
	limitCelsius: z.number(),
	fuse: z.string().describe("before it; empty: none"),
	needed: z
		.object({ mm2: z.number(), awg: z.string(), because: z.enum(["heat", "fuse", "handling"]) })
		.nullable()
		.describe("smallest size that does; null: none on the shelf"),
	ends: z.array(endSchema),
	suffices: z.boolean(),
});

const fuseSchema = z.object({
	fuse: z.string(),
	amps: z.number(),
	steady: peakSchema,
	share: z.number().describe("of its rating that it carries for long, 0 to 1"),
	rush: peakSchema,
	start: peakSchema,
	holdsRush: z.number().nullable().describe("seconds; null: 100 hours and more"),
	holdsStart: z.number().nullable(),
	wires: z.array(z.string()).describe("behind it, up to the next fuse or the load"),
	thinnest: z.string().describe("the thinnest of them"),
	largestAmps: z.number().nullable().describe("largest fuse for that wire"),
	worst: z
		.object({
			share: z.number().describe("of the rating"),
			amps: z.number(),
			seconds: z.number().describe("that the fuse may take to open, or must carry it"),
			celsius: z.number().nullable().describe("of the thinnest wire then; null: it burns"),
			limitCelsius: z.number(),
			sources: z.array(z.string()),
		})
		.nullable()
		.describe("where the thinnest wire comes nearest to its limit"),
	faults: z.array(z.string()).describe("what is wrong, in words; empty: it does"),
});

const loadSchema = z.object({
	part: z.string(),
	element: z.string(),
	when: z.string().describe("the condition in which it loses most"),
	amps: z.number(),
	volts: z.number().describe("across the load"),
	feedVolts: z.number(),
	groundVolts: z.number(),
	mostVolts: z.number().nullable().describe("allowed for both together"),
	suffices: z.boolean(),
});

const spliceSchema = z.object({
	splice: z.string(),
	worked: z.boolean().describe("the recipe makes it or works on it"),
	wires: z.array(z.string()),
	kind: z.enum(["butt crimp", "parallel crimp"]),
	mm2: z.number().describe("that the barrel must hold"),
	barrelMm2: sourcedSchema,
	sleeveMm: sourcedSchema.describe("3 to 1 with sealing glue, as supplied; null: none spans it"),
	stripMm: sourcedSchema,
	pullNewtons: sourcedSchema.describe("of its thinnest wire"),
	wet: z.boolean(),
});

export const sizeSchema = z.object({
	of: whichSchema,
	wires: z.array(wireSchema),
	fuses: z.array(fuseSchema),
	loads: z.array(loadSchema),
	splices: z.array(spliceSchema),
	sources: z.record(z.string(), z.string()).describe("of the figures that have no row of their own"),
	misfits: z.array(misfitSchema),
});

export type SizeAnswer = z.infer<typeof sizeSchema>;

/** @throws CircuitError when the network does not settle */
export function sizeAnswer(car: Car, which: Which): SizeAnswer {
	const { wires, fuses, loads, splices } = sizeCircuits(car.circuit(which));
	const worked = (what: "wires" | "joints", id: string) => which === "converted" && car.touched[what].has(id);
	return {
		of: which,
		wires: wires.map((wire) => wireOf(wire, worked("wires", wire.wire))),
		fuses: fuses.map(fuseOf),
		loads: loads.map(({ condition, mostVolts = null, ...load }) => ({ ...load, when: condition, mostVolts })),
		splices: splices.map((splice) => spliceOf(splice, worked("joints", splice.splice))),
		sources: { ...SIZE_SOURCES },
		misfits: misfitsOf(car, which),
	};
}

const peakOf = ({ amps, condition }: Peak) => ({ amps, when: condition });
const finite = (value: number) => (Number.isFinite(value) ? value : null);

function wireOf(wire: WireSize, worked: boolean): z.infer<typeof wireSchema> {
	const { steady, brief, rush, start, celsius, needed, ends, ...rest } = wire;
	return {
		...rest,
		worked,
		...{ steady: peakOf(steady), brief: peakOf(brief), rush: peakOf(rush), start: peakOf(start) },
		celsius: finite(celsius),
		needed: needed ?? null,
		ends: ends.map(endOf),
	};
}

function endOf({
	at,
	terminal,
	stripMm,
	pullNewtons,
	pullNewtonsAwg,
	sealMm,
}: EndSize): z.infer<typeof endSchema> {
	return {
		...{ at, terminal, stripMm: stripMm ?? null, pullNewtons: pullNewtons ?? null },
		...{ pullNewtonsAwg: pullNewtonsAwg ?? null, sealMm: sealMm ?? null },
	};
}

function fuseOf(fuse: FuseSize): z.infer<typeof fuseSchema> {
	const { worst, largestAmps, holdsRush, holdsStart } = fuse;
	return {
		...fuse,
		...{ steady: peakOf(fuse.steady), rush: peakOf(fuse.rush), start: peakOf(fuse.start) },
		...{ holdsRush: holdsRush ?? null, holdsStart: holdsStart ?? null, largestAmps: largestAmps ?? null },
		wires: [...fuse.wires],
		worst: worst ? { ...worst, celsius: finite(worst.celsius), sources: [...worst.sources] } : null,
		faults: [...fuse.faults],
	};
}

function spliceOf(splice: SpliceSize, worked: boolean): z.infer<typeof spliceSchema> {
	const { wires, barrelMm2, sleeveMm, stripMm, pullNewtons, ...rest } = splice;
	return {
		...{ ...rest, worked, wires: [...wires], barrelMm2: barrelMm2 ?? null, sleeveMm: sleeveMm ?? null },
		...{ stripMm: stripMm ?? null, pullNewtons: pullNewtons ?? null },
	};
}
