/** What the rules find. */
import { type Car, groundsOf, runRules, type Which } from "@loomwright/engine";
import { z } from "zod";
import { misfitSchema, misfitsOf, whichSchema } from "./question.js";

export const rulesSchema = z.object({
	of: whichSchema,
	findings: z
		.array(
			z.object({
				rule: z.string(),
				severity: z
					.enum(["stop", "warn", "note"])
					.describe("stop: do not cut or power up; warn: mend before the car leaves; note: worth knowing"),
				where: z.string(),
				why: z.string(),
				mend: z.string(),
				path: z.array(z.string()).describe("contacts, joints, wires and parts concerned"),
				cautions: z.array(z.string()),
				grounds: z
					.array(z.string())
					.describe("the rows of the loom along the path: an acceptance covers the finding while they stay"),
			}),
		)
		.describe("gravest first"),
	misfits: z.array(misfitSchema),
});

export type RulesAnswer = z.infer<typeof rulesSchema>;

/** @throws CircuitError when the network does not settle */
export function rulesAnswer(car: Car, which: Which): RulesAnswer {
	const before = which === "converted" ? car.circuit("delivered") : undefined;
	const { loom } = car.circuit(which);
	const findings = runRules(car.circuit(which), before).map((finding) => {
		const { rule, severity, where, why, mend, path, cautions } = finding;
		return {
			...{ rule, severity, where, why, mend },
			...{ path: [...path], cautions: [...cautions], grounds: groundsOf(loom, finding) },
		};
	});
	return { of: which, findings, misfits: misfitsOf(car, which) };
}
