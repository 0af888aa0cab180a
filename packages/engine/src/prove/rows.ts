/** The chosen readings as rows of the sheet, in the order of the walk. */
import { type Circuit, type Operating, operate, separated, settingsOf } from "../circuit/index.js";
import { placeOf } from "../faults/index.js";
import { pointOf, sensitivity } from "../readings/index.js";
import { LEAST_OPEN, limits } from "./detect.js";
import type { SheetQuestion } from "./question.js";
import type { Candidate, SheetPart, SheetRow } from "./types.js";
import { walk } from "./walk.js";
import { deadCautions, pointWords, sortKey } from "./words.js";

/** Places of a reading's two points. */
export function placesOf(circuit: Circuit, { from, to }: Candidate): [string, string] {
	return [placeOf(circuit.loom, from), placeOf(circuit.loom, to)];
}

/**
 * Parts that have rows, in the order of the phases.
 * @param catches ids of the faults that each chosen candidate catches
 */
export function partsOf(
	{ circuit, phases, candidates }: SheetQuestion,
	chosen: readonly number[],
	catches: ReadonlyMap<number, ReadonlySet<string>>,
): SheetPart[] {
	const { loom } = circuit;
	let leads: readonly string[] = [];
	let number = 0;
	return phases.flatMap((phase, p): SheetPart[] => {
		const own = chosen.filter((k) => candidates[k]!.phase === p);
		if (own.length === 0) return [];
		const point = operate(circuit, circuit.standing(phase.when), { dead: true });
		const settings = [...settingsOf(loom, phase.when)];
		const unmated = new Set(settings.filter(([, state]) => state === "unmated").map(([id]) => id));
		const stops = own.map((k) => {
			const { from, to } = candidates[k]!;
			return {
				places: placesOf(circuit, candidates[k]!),
				key: `${sortKey(loom, from)} ${sortKey(loom, to)}`,
			};
		});
		const rows = walk(stops, leads).map(({ at, turned }): SheetRow => {
			const k = own[at]!;
			const { what, when, ...ends } = candidates[k]!;
			const [from, to] = turned ? [ends.to, ends.from] : [ends.from, ends.to];
			return {
				number: ++number,
				question: { what, from, to, when },
				from: pointWords(loom, from, unmated),
				to: pointWords(loom, to, unmated),
				...expected(circuit, point, from, to),
				catches: [...catches.get(k)!],
				place: placeOf(loom, from),
				toPlace: placeOf(loom, to),
				cautions: deadCautions(loom, [from, to]),
			};
		});
		leads = [rows.at(-1)!.place, rows.at(-1)!.toPlace];
		return [{ ...phase, rows }];
	});
}

/** Value and pass limits on the car's own network, as takeReading gives them. */
function expected(
	circuit: Circuit,
	point: Operating,
	from: string,
	to: string,
): Pick<SheetRow, "value" | "low" | "high"> {
	const [a, b] = [pointOf(circuit, from), pointOf(circuit, to)];
	const open = { value: undefined, low: LEAST_OPEN, high: undefined };
	if (separated(point, a, b)) return open;
	const { sourceOhms: value, deviation } = sensitivity(point, { kind: "ohms", a, b });
	return value < LEAST_OPEN ? { value, ...limits(value, deviation) } : open;
}
