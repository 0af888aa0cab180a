/** A device of the wrong value: a bulb, resistor, sensor or coil of twice or half the ohms in the place of the right one. */
import type { Branch, Circuit } from "../../circuit/index.js";
import { CHANCE, partHands } from "../rates.js";
import type { Fault, FaultKind, Pattern } from "../types.js";
import { partWords } from "../words.js";

/** Kinds that are one resistance between two pins, and are bought in several values. */
const KINDS: ReadonlySet<string> = new Set([
	"resistor",
	"lamp",
	"coil",
	"injector",
	"heater",
	"thermistor",
	"bus end",
]);

/** Twice the ohms by as many in series, half by as many in parallel: right in every condition whose ohms are these. */
export function otherValues(branch: number, { a, b }: Branch, siemens: number): Pattern[] {
	return [
		{ weight: 0.5, change: { branches: [{ branch, seriesOhms: 1 / siemens }], added: [] } },
		{ weight: 0.5, change: { branches: [], added: [{ a, b, siemens }] } },
	];
}

/** The one branch that is the device's resistance, in the condition in which it stands at rest. */
function resistance(circuit: Circuit, part: string, rest: Float64Array): number | undefined {
	const own = (circuit.branchesOf.get(part) ?? []).filter(
		(k) => circuit.branches[k]!.owner.what === "device",
	);
	return own.length === 1 && rest[own[0]!]! > 0 ? own[0] : undefined;
}

export const wrongValue: FaultKind = {
	kind: "wrong value",
	title: "Part of the wrong value",
	source: "common practice, no source",
	list(context) {
		const { circuit, loom } = context;
		const rest = circuit.standing([...loom.conditions.keys()][0]!).siemens;
		return [...loom.parts.values()]
			.filter((part) => KINDS.has(part.kind) && !part.marks.includes("pyrotechnic"))
			.flatMap((part): Fault[] => {
				const branch = resistance(circuit, part.id, rest);
				if (branch === undefined) return [];
				return [
					{
						id: `wrong value:${part.id}`,
						kind: "wrong value",
						where: `${partWords(loom, part.id)}: a part of another value in its place`,
						place: part.place,
						prior: CHANCE.wrongValue * partHands(context, part.id),
						patterns: otherValues(branch, circuit.branches[branch]!, rest[branch]!),
						shakenBy: "",
						inParts: [part.id],
						path: [part.id],
						mend: `read the value on ${part.id} or measure it by itself, and fit the one that belongs there`,
					},
				];
			});
	},
};
