/**
 * What was seen, act by act. Each act is one entry of the job's history; the evidence is what they add up to,
 * so that taking the last one back is leaving it out.
 */
import type { Evidence, Occasion, Which } from "@loomwright/engine";
import type { Written } from "../../server/types.js";

export type Act =
	| Exclude<Written, { kind: "note" }>
	| { readonly kind: "occasion"; readonly body: { readonly note: string } };

const EMPTY: Occasion = {
	note: "",
	reseated: "",
	codes: undefined,
	units: [],
	functions: {},
	readings: [],
	bench: {},
};

/** Evidence for the engine; undefined while nothing was seen. */
export function evidenceOf(
	acts: readonly Act[],
	which: Which,
	title: string,
	battery?: Evidence["battery"],
): Evidence | undefined {
	const occasions = acts.reduce(fold, [EMPTY]);
	return acts.some(({ kind }) => kind !== "occasion") ? { title, of: which, battery, occasions } : undefined;
}

function fold(occasions: readonly Occasion[], act: Act): readonly Occasion[] {
	const before = occasions.slice(0, -1);
	const last = occasions.at(-1)!;
	switch (act.kind) {
		case "occasion":
			return last === EMPTY
				? [...before, { ...EMPTY, note: act.body.note }]
				: [...occasions, { ...EMPTY, note: act.body.note }];
		case "reseated":
			return nothingSeen(last) && last.reseated === ""
				? [...before, { ...last, reseated: act.body.what }]
				: [...occasions, { ...EMPTY, reseated: act.body.what }];
		case "codes":
			return [...before, { ...last, codes: act.body.codes, units: act.body.units }];
		case "function":
			return [...before, { ...last, functions: { ...last.functions, [act.body.function]: act.body.holds } }];
		case "reading":
			return [...before, { ...last, readings: [...last.readings, act.body] }];
		case "bench":
			return [...before, { ...last, bench: { ...last.bench, [act.body.part]: act.body.good } }];
	}
}

const nothingSeen = ({ codes, functions, readings, bench }: Occasion) =>
	codes === undefined &&
	readings.length === 0 &&
	Object.keys(functions).length + Object.keys(bench).length === 0;

/** A practice case as the acts that make it up, in the order in which a person would do them. */
export function actsOf({ occasions }: Evidence): Act[] {
	return occasions.flatMap((occasion, k): Act[] => {
		const { note, reseated, codes, units, functions, readings, bench } = occasion;
		return [
			...(note !== "" || (k > 0 && reseated === "") ? [act("occasion", { note })] : []),
			...(reseated === "" ? [] : [act("reseated", { what: reseated })]),
			...Object.entries(functions).map(([name, holds]) => act("function", { function: name, holds })),
			...(codes === undefined ? [] : [act("codes", { codes, units })]),
			...readings.map((reading) => act("reading", reading)),
			...Object.entries(bench).map(([part, good]) => act("bench", { part, good })),
		];
	});
}

const act = <K extends Act["kind"]>(kind: K, body: Extract<Act, { kind: K }>["body"]) =>
	({ kind, body }) as Act;
