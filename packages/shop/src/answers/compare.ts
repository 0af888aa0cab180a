/** What the recipe changes, per connector and cavity. */
import { type Car, type Change, compareLooms, formatColours } from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf } from "./question.js";

const joinedSchema = z
	.object({
		wire: z.string(),
		mm2: z.number().describe("cross-section"),
		colour: z.string().describe("IEC 60757; empty: not known"),
		metres: z.number().describe("of this wire"),
		leads: z
			.array(
				z.object({
					place: z.string().describe("contact, ground point, bar or loose end"),
					metres: z.number().describe("along the wires"),
					splices: z.array(z.string()).describe("passed on the way"),
				}),
			)
			.describe("where the wire leads, splices followed through"),
	})
	.nullable()
	.describe("the wire and where it leads; null: none");

export const changeSchema = z.object({
	kind: z.string(),
	connector: z.string(),
	cavity: z.string(),
	contact: z.string(),
	part: z.string(),
	joint: z.string(),
	wire: z.string(),
	text: z.string().describe("the change in words"),
	before: joinedSchema,
	after: joinedSchema,
});

export const compareSchema = z.object({
	changes: z.array(changeSchema),
	misfits: z.array(misfitSchema),
});

export type CompareAnswer = z.infer<typeof compareSchema>;

/** The loom as converted against the loom as delivered. */
export function compareAnswer(car: Car): CompareAnswer {
	const changes = changesOf(compareLooms(car.delivered, car.converted));
	return { changes, misfits: misfitsOf(car, "converted") };
}

/** Differences of two looms as data. */
export function changesOf(changes: readonly Change[]): z.infer<typeof changeSchema>[] {
	return changes.map((change) => {
		const { kind, connector, cavity, contact, part, joint, wire, text } = change;
		const ends = { before: joined(change.before), after: joined(change.after) };
		return { kind, connector, cavity, contact, part, joint, wire, text, ...ends };
	});
}

function joined(there: Change["before"]): z.infer<typeof joinedSchema> {
	if (there === undefined) return null;
	const { id, mm2, colours, metres } = there.wire;
	const leads = there.reaches.map((reach) => ({
		place: reach.place,
		metres: toMillimetre(reach.metres),
		splices: [...reach.splices],
	}));
	return { wire: id, mm2, colour: formatColours(colours), metres: toMillimetre(metres), leads };
}

const toMillimetre = (metres: number): number => Math.round(metres * 1000) / 1000;
