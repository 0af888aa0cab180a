/** Evidence from its JSON file (docs/evidence.md), every fault of the file at once, by path. */
import { z } from "zod";
import type { Evidence } from "./types.js";

const taken = z.strictObject({
	what: z.enum(["ohms", "volts", "drop", "amps"]),
	from: z.string().min(1),
	to: z.string().min(1),
	when: z.string().min(1),
	value: z.union([z.number(), z.literal("open")]),
});

const occasion = z.strictObject({
	note: z.string().default(""),
	reseated: z.string().default(""),
	codes: z.array(z.string()).optional(),
	units: z.array(z.string()).default([]),
	functions: z.record(z.string(), z.boolean()).default({}),
	readings: z.array(taken).default([]),
	bench: z.record(z.string(), z.boolean()).default({}),
});

/** The evidence file's shape; its JSON Schema is made from it. */
export const evidenceSchema = z.strictObject({
	title: z.string().default(""),
	of: z.enum(["delivered", "converted"]).default("converted"),
	battery: z.literal("off").optional(),
	occasions: z.array(occasion).min(1),
});

/** Evidence that cannot be read, with every fault and where it stands. */
export class EvidenceError extends Error {
	constructor(
		readonly file: string,
		readonly faults: readonly string[],
	) {
		super(faults.map((fault) => `${file}: ${fault}`).join("\n"));
		this.name = "EvidenceError";
	}
}

/**
 * @param text the JSON text
 * @param file its name, for messages
 * @throws EvidenceError with every fault of the file
 */
export function parseEvidence(text: string, file: string): Evidence {
	let raw: unknown;
	try {
		raw = JSON.parse(text);
	} catch (error) {
		throw new EvidenceError(file, [`not JSON: ${(error as Error).message}; wanted: see docs/evidence.md`]);
	}
	const result = evidenceSchema.safeParse(raw);
	if (result.success)
		return {
			...result.data,
			occasions: result.data.occasions.map((o) => ({ ...o, codes: o.codes })),
		};
	const faults = result.error.issues.map((issue) => {
		const path = issue.path
			.map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
			.join("");
		return `at ${path.replace(/^\./, "") || "the top"}: ${issue.message}`;
	});
	throw new EvidenceError(file, faults);
}
