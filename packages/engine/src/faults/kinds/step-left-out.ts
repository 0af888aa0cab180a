/** A step of the recipe that was not done: the network is that of the recipe without it. */
import { CHANCE } from "../rates.js";
import type { FaultKind } from "../types.js";

export const stepLeftOut: FaultKind = {
	kind: "step left out",
	title: "Recipe step left out",
	source: "common practice, no source",
	list: ({ circuit, steps }) =>
		[...circuit.variants].flatMap(([step, differences]) => {
			const known = steps.get(step);
			if (known === undefined || differences.length === 0) return [];
			const change = { branches: differences.map(({ branch, to }) => ({ branch, ...to })), added: [] };
			const touched = new Set(differences.map(({ branch }) => circuit.branches[branch]!.owner.id));
			return [
				{
					id: `step left out:${step}`,
					kind: "step left out",
					where: `step ${step} (${known.kind}): ${known.title}`,
					place: known.place,
					prior: CHANCE.stepLeftOut,
					patterns: [{ weight: 1, change }],
					shakenBy: "",
					inParts: [],
					path: [...touched],
					mend: `do step ${step} now`,
				},
			];
		}),
};
