/**
 * Another relay in the socket than the one that belongs there: a coil for twice the voltage, a diode across the coil
 * the wrong way round, no break contact. Shares: common practice, no source.
 *
 * Not listed: a relay whose contact opens when it pulls in; a change can hold a contact, not turn its sense about.
 */
import type { Branch, BranchChange, Circuit } from "../../circuit/index.js";
import type { Part } from "../../loom/index.js";
import { CHANCE, partHands } from "../rates.js";
import type { Fault, FaultKind, Pattern } from "../types.js";
import { partWords } from "../words.js";

/** A coil for 24 V has about four times the ohms of one for 12 V at equal power, and 7 V do not move it. */
const COIL_TIMES = 4;
/** A conducting diode across the coil. */
const DIODE_SIEMENS = 20;

function elements(circuit: Circuit, part: string, element: string): { branch: number; is: Branch }[] {
	return (circuit.branchesOf.get(part) ?? [])
		.map((branch) => ({ branch, is: circuit.branches[branch]! }))
		.filter(({ is }) => is.owner.what === "device" && is.owner.element === element);
}

export function wrongRelayPatterns(circuit: Circuit, part: Part, rest: Float64Array): Pattern[] {
	const coil = elements(circuit, part.id, "coil");
	const makes = elements(circuit, part.id, "make contact");
	const breaks = elements(circuit, part.id, "break contact");
	const [first] = coil;
	const last = coil.at(-1);
	if (first === undefined || last === undefined) return [];
	const weak: BranchChange[] = [
		...coil.map(({ branch }) => ({ branch, siemens: rest[branch]! / COIL_TIMES })),
		...makes.map(({ branch }) => ({ branch, siemens: 0 })),
		...breaks.map(({ branch }) => ({ branch, siemens: rest[branch]! })),
	];
	const patterns: Pattern[] = [
		{ weight: 0.5, change: { branches: weak, added: [] } },
		{
			weight: 0.3,
			change: { branches: [], added: [{ a: first.is.a, b: last.is.b, siemens: DIODE_SIEMENS }] },
		},
	];
	if (breaks.length > 0)
		patterns.push({
			weight: 0.2,
			change: { branches: breaks.map(({ branch }) => ({ branch, siemens: 0 })), added: [] },
		});
	const sum = patterns.reduce((all, { weight }) => all + weight, 0);
	return patterns.map(({ weight, change }) => ({ weight: weight / sum, change }));
}

export const wrongRelay: FaultKind = {
	kind: "wrong relay",
	title: "Another relay than belongs there",
	source: "common practice, no source",
	list(context) {
		const { circuit, loom } = context;
		const rest = circuit.standing([...loom.conditions.keys()][0]!).siemens;
		return [...loom.parts.values()]
			.filter((part) => part.kind === "relay" && !part.marks.includes("pyrotechnic"))
			.flatMap((part): Fault[] => {
				const patterns = wrongRelayPatterns(circuit, part, rest);
				if (patterns.length === 0) return [];
				return [
					{
						id: `wrong relay:${part.id}`,
						kind: "wrong relay",
						where: `${partWords(loom, part.id)}: a relay of another type in its socket`,
						place: part.place,
						prior: CHANCE.wrongRelay * partHands(context, part.id),
						patterns,
						shakenBy: "",
						inParts: [part.id],
						path: [part.id],
						mend: `compare the number and the drawing on ${part.id} with what belongs there, and fit that`,
					},
				];
			});
	},
};
