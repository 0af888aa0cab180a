/** What an entry may hold, by its kind. */
import { z } from "zod";

const name = z.string().trim().min(1).max(200);
const text = z.string().trim().min(1).max(20_000);

const codes = z.object({
	codes: z.array(name).max(500).describe("trouble codes read out; empty: none were stored"),
	units: z.array(name).max(100).default([]).describe("control units that answered; empty: all"),
});

const reading = z.object({
	what: z.enum(["ohms", "volts", "drop", "amps"]),
	from: name.describe("contact or joint; CONTACT!pin is the part's own side"),
	to: name,
	when: name.describe("condition"),
	value: z.union([z.number(), z.literal("open")]).describe("ohms, volts or amperes, or open"),
});

const kind = <Kind extends string, Body extends z.ZodType>(word: Kind, body: Body) =>
	z.object({ kind: z.literal(word), body });

/** The kinds a person writes, each with its body. */
export const writtenKinds = [
	kind("codes", codes),
	kind("reading", reading),
	kind("function", z.object({ function: name, holds: z.boolean() })),
	kind("bench", z.object({ part: name, good: z.boolean() })),
	kind("reseated", z.object({ what: name.describe("connector or relay taken off and put back") })),
	kind("note", z.object({ text })),
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
