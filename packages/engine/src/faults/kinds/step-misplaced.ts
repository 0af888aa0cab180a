/** A step of the recipe done on the wire or terminal beside the one it means: the network is that of the recipe so changed. */
import { CHANCE } from "../rates.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";

/** What stands between the step and the wire or contact it was done on, in the name of a variant of the circuit. */
export const ON = "@";

function list({ circuit, steps }: FaultContext): Fault[] {
	return [...circuit.variants].flatMap(([name, differences]): Fault[] => {
		const at = name.indexOf(ON);
		const known = at < 0 ? undefined : steps.get(name.slice(0, at));
		if (known === undefined || differences.length === 0) return [];
		const instead = name.slice(at + ON.length);
		const change = { branches: differences.map(({ branch, to }) => ({ branch, ...to })), added: [] };
		return [
			{
				id: `step at the wrong place:${name}`,
				kind: "step at the wrong place",
				where: `step ${name.slice(0, at)} (${known.kind}): ${known.title}: done on ${instead}`,
				place: known.place,
				prior: CHANCE.stepMisplaced,
				patterns: [{ weight: 1, change }],
				shakenBy: "",
				inParts: [],
				path: [...new Set(differences.map(({ branch }) => circuit.branches[branch]!.owner.id))],
				mend: `put ${instead} back as it was, and do step ${name.slice(0, at)} where it belongs`,
			},
		];
	});
}

export const stepMisplaced: FaultKind = {
	kind: "step at the wrong place",
	title: "Recipe step done at the wrong place",
	source: "common practice, no source",
	list,
};
