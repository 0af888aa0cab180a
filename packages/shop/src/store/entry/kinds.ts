/** What an entry may hold, by its kind. */
import { z } from "zod";
import { SORTS } from "../../people/sorts.js";

const name = z.string().trim().min(1).max(200);
const text = z.string().trim().min(1).max(20_000);
/** A stage of the power-up names every fuse that is not in yet. */
const condition = z.string().trim().min(1).max(20_000);
const ofEntry = z.string().min(1).max(64);

const step = name.describe("recipe/01, prove/ROW, power/STAGE, or a name of the shop's own");
const aboutStep = step.optional().describe("the step it belongs to, if to one");

const codes = z.object({
	codes: z.array(name).max(500).describe("trouble codes read out; empty: none were stored"),
	units: z.array(name).max(100).default([]).describe("control units that answered; empty: all"),
});

const reading = z.object({
	what: z.enum(["ohms", "volts", "drop", "amps"]),
	from: name.describe("contact or joint; CONTACT!pin is the part's own side"),
	to: name,
	when: condition.describe("condition, listed or said in place: BAT=off; X1=unmated"),
	value: z.union([z.number(), z.literal("open")]).describe("ohms, volts or amperes, or open"),
	step: aboutStep,
});

const ofStep = z.object({
	step,
	sort: z.enum(SORTS).optional().describe("of a step of the shop's own; others are known by their name"),
	text: text.optional(),
});

const lines = z.array(z.string().max(20_000)).max(2000);

/** What a rule found, as whoever accepts it saw it: the record stands also when the car has become another. */
export const acceptedFinding = z.object({
	of: z.enum(["converted", "delivered"]),
	finding: z.object({
		rule: name,
		severity: z.enum(["stop", "warn", "note"]),
		where: text,
		why: text,
		mend: text,
		path: lines,
		cautions: lines,
	}),
	grounds: lines.describe(
		"the rows of the car's tables along the path, as they were: `grounds` of the finding",
	),
	text: text.describe("why it may stay as it is"),
});
export type AcceptedFinding = z.infer<typeof acceptedFinding>;

const acceptedCar = z.object({ by: name.describe("who accepts the car"), text });

const repair = z.object({
	fault: z.string().trim().min(1).max(500).describe("id of the fault, as finding names it"),
	kind: name.describe("kind of fault, as finding names it"),
	where: text,
	steps: z.array(name).max(500).describe("of the recipe that had worked on it; empty: no hand was on it"),
	worked: z.string().trim().max(200).describe("who had done them; empty: not known, or nobody"),
});

const kind = <Kind extends string, Body extends z.ZodType>(word: Kind, body: Body) =>
	z.object({ kind: z.literal(word), body });

/** The kinds a person writes, each with its body. */
const writtenKinds = [
	kind("codes", codes),
	kind("reading", reading),
	kind("function", z.object({ function: name, holds: z.boolean() })),
	kind("bench", z.object({ part: name, good: z.boolean() })),
	kind("reseated", z.object({ what: name.describe("connector or relay taken off and put back") })),
	kind("note", z.object({ text, step: aboutStep })),
	kind(
		"photo",
		z.object({ photo: z.string().regex(/^[0-9a-f]{64}$/), text: text.optional(), step: aboutStep }),
	),
	kind("step", ofStep.describe("a step was done")),
	kind("sign-off", ofStep.describe("a person answers for a step that was done")),
	kind("hold", z.object({ step: aboutStep, text: text.describe("why work must wait") })),
	kind("lift", z.object({ hold: ofEntry.describe("id of the hold"), text })),
	kind("repair", repair.describe("a fault was found and mended")),
	kind("acceptance", z.union([acceptedFinding, acceptedCar])),
	kind("correction", z.object({ of: ofEntry.describe("id of the entry taken back"), text })),
] as const;

/** Written by the server itself when tables of the car are replaced: SHA-256 of each before and after. */
const tables = kind(
	"tables",
	z.object({
		files: z.array(z.object({ name: z.string(), before: z.string(), after: z.string() })),
	}),
);

/** An entry's kind and body, as a person may write it. */
export const written = z.discriminatedUnion("kind", writtenKinds);
export type Written = z.infer<typeof written>;

/** An entry's kind and body, as it may be stored. */
export const kept = z.discriminatedUnion("kind", [...writtenKinds, tables]);
export type Kept = z.infer<typeof kept>;
