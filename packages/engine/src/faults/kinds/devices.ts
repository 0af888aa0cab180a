/** Devices that failed inside: fuse blown, relay or sensor dead, a control unit's pin or whole unit dead. */
import type { Circuit } from "../../circuit/index.js";
import { opened } from "../patterns.js";
import { CHANCE, COMES_AND_GOES } from "../rates.js";
import type { Fault, FaultKind } from "../types.js";
import { partWords } from "../words.js";

/** The device's own elements, each by its first branch. */
function elements(circuit: Circuit, part: string): { branch: number; element: string }[] {
	const first = new Map<string, number>();
	for (const branch of circuit.branchesOf.get(part) ?? []) {
		const { what, element } = circuit.branches[branch]!.owner;
		if (what === "device" && !first.has(element)) first.set(element, branch);
	}
	return [...first].map(([element, branch]) => ({ branch, element }));
}

export const fuseBlown: FaultKind = {
	kind: "fuse blown",
	title: "Fuse blown",
	source: "fuse and connector rates: reference/diagnosis/failure-rates.json",
	list: ({ circuit, loom }) =>
		[...loom.parts.values()]
			.filter((part) => part.kind === "fuse")
			.flatMap((part): Fault[] =>
				elements(circuit, part.id).map(({ branch }) => ({
					id: `fuse blown:${part.id}`,
					kind: "fuse blown",
					where: partWords(loom, part.id),
					place: part.place,
					prior: CHANCE.fuse,
					patterns: [{ weight: 1, change: opened(branch) }],
					shakenBy: "",
					inParts: [part.id],
					path: [part.id],
					mend: `find what blew ${part.id} before a new one of the same rating goes in`,
				})),
			),
};

/** Kinds whose failure is another kind's business, or that never fail on their own. */
const NOT_HERE: ReadonlySet<string> = new Set(["fuse", "connector", "control unit", "igniter"]);

export const deviceDead: FaultKind = {
	kind: "device dead",
	title: "Part failed inside",
	source: "relay 2.1, switch 0.018 per 1e6 h and the like: reference/diagnosis/failure-rates.json",
	list: ({ circuit, loom }) =>
		[...loom.parts.values()]
			.filter((part) => !NOT_HERE.has(part.kind) && !part.marks.includes("pyrotechnic"))
			.flatMap((part): Fault[] => {
				const own = elements(circuit, part.id);
				const chance = part.kind === "relay" ? CHANCE.relay : CHANCE.device;
				return own.map(({ branch, element }) => ({
					id: `device dead:${part.id}:${element}`,
					kind: "device dead",
					where: `${partWords(loom, part.id)}: ${element} open inside`,
					place: part.place,
					prior: chance / own.length,
					patterns: [{ weight: 1, change: opened(branch) }],
					shakenBy: "",
					comesAndGoes: COMES_AND_GOES.device,
					inParts: [part.id],
					path: [part.id],
					mend: `test ${part.id} by itself on the bench and replace it if it is bad`,
				}));
			}),
};

export const unitPinDead: FaultKind = {
	kind: "control-unit pin dead",
	title: "Control unit's pin failed inside",
	source: "common practice, no source",
	list: ({ circuit, loom }) =>
		[...loom.parts.values()]
			.filter((part) => part.kind === "control unit" && !part.marks.includes("pyrotechnic"))
			.flatMap((part): Fault[] =>
				elements(circuit, part.id)
					// What the unit draws is no pin, and a dead wake input is a dead unit.
					.filter(({ element }) => !/ (draw|wake)$/.test(element))
					.map(({ branch, element }) => ({
						id: `control-unit pin dead:${part.id}:${element}`,
						kind: "control-unit pin dead",
						where: `${partWords(loom, part.id)}: ${element} open inside`,
						place: part.place,
						prior: CHANCE.unitPin,
						patterns: [{ weight: 1, change: opened(branch) }],
						shakenBy: "",
						inParts: [],
						path: [element.split(" ")[0]!, part.id],
						mend: `only after every wire to ${part.id} has been proven: have the unit tested`,
					})),
			),
};

export const unitDead: FaultKind = {
	kind: "control unit dead",
	title: "Control unit does not run",
	source: "common practice, no source",
	list({ circuit, loom }) {
		const standing = circuit.standing([...loom.conditions.keys()][0] ?? "");
		return standing.automata
			.filter(({ spec }) => spec.idle && !loom.parts.get(spec.part)?.marks.includes("pyrotechnic"))
			.map(({ spec }): Fault => {
				const branches = [...spec.idle!].map(([branch, asleep]) => ({ branch, ...asleep }));
				const change = { branches, added: [] };
				return {
					id: `control unit dead:${spec.part}`,
					kind: "control unit dead",
					where: `${partWords(loom, spec.part)} does not run although fed`,
					place: loom.parts.get(spec.part)?.place ?? "",
					prior: CHANCE.unit,
					patterns: [{ weight: 1, change }],
					shakenBy: "",
					inParts: [spec.part],
					path: [spec.part],
					mend: `only after its feeds, grounds and wake line have been proven: have ${spec.part} tested`,
				};
			});
	},
};
