/** Why a fault is suspected, drawn and in numbers: its path, what it predicts of each reading, what would refute it. */
import { contactWords, partWords, placeOf, wireWords } from "../faults/index.js";
import type { Loom } from "../loom/index.js";
import type { Question } from "../readings/index.js";
import { rangeText } from "./information.js";
import { type Item, questionText, unaskable, type Watch } from "./items.js";
import { outcomesOf } from "./outcomes.js";
import type { Contradiction, Evidence, Explanation, PathPoint, Predicted, Refutation } from "./types.js";
import { itemLog, type Weighed } from "./weighing.js";

/** An outcome less likely than this under the fault speaks against it. */
const UNLIKELY = 0.05;
/** An entry no likelier under a fault than this many times a stray one does not fit it. */
const CONTRADICTS = 5;

/**
 * @param fault with the chances of its patterns after the evidence
 * @param leading all leading hypotheses, the fault among them or not
 * @param next readings worth taking, best first
 */
export function explain(
	watch: Watch,
	fault: Weighed,
	leading: readonly Weighed[],
	items: readonly Item[],
	evidence: Evidence,
	next: readonly Question[],
): Explanation {
	const { loom } = watch.circuit;
	const taken = evidence.occasions.flatMap(({ readings }) => readings);
	const read = taken.flatMap((reading): Predicted[] => {
		const predicted = predict(watch, fault, reading);
		return predicted ? [{ ...predicted, value: reading.value }] : [];
	});
	return {
		id: fault.fault!.id,
		where: fault.fault!.where,
		path: fault.fault!.path.map((id) => pointOf(loom, id)),
		taken: read,
		notTaken: next.flatMap((question) => predict(watch, fault, question) ?? []),
		refutes: next
			.flatMap((question) => refutation(watch, fault, leading, question) ?? [])
			.sort((x, y) => y.chance - x.chance),
		against: contradictions(fault, items, "this fault"),
	};
}

/** Entries that do not fit a hypothesis, in their order. @param whom in words */
export function contradictions(w: Weighed, items: readonly Item[], whom: string): Contradiction[] {
	return items
		.filter((item) => Math.exp(itemLog(w, item)) < item.stray * CONTRADICTS)
		.map(({ text, occasion, entry }) => ({
			text: `${text}: does not fit ${whom}; repeat it`,
			...{ occasion, entry },
		}));
}

function pointOf(loom: Loom, id: string): PathPoint {
	const place = loom.wires.get(id)?.bundle ?? placeOf(loom, id);
	if (loom.contacts.has(id)) return { id, what: "contact", text: contactWords(loom, id), place };
	if (loom.wires.has(id)) return { id, what: "wire", text: wireWords(loom, id), place };
	return { id, what: loom.joints.has(id) ? "joint" : "part", text: partWords(loom, id), place };
}

/** What the meter would show under the fault and on a sound car; undefined where it cannot be predicted. */
function predict(watch: Watch, { patterns }: Weighed, question: Question): Predicted | undefined {
	const read = unaskable(watch.circuit, question) ? undefined : watch.reader.of(question);
	if (read === undefined) return undefined;
	const values = Float64Array.from(patterns, ({ pattern }) => read.number(pattern.change));
	const { count, outcomes } = outcomesOf(question.what, read.deviation(), values);
	const shows = Array.from({ length: count }, (_, outcome) => {
		const own = patterns.flatMap(({ chance }, p) =>
			outcomes[p] === outcome ? [{ chance, value: values[p]! }] : [],
		);
		const numbers = own.map(({ value }) => value).filter((value) => !Number.isNaN(value));
		return {
			text: rangeText(question, Math.min(...numbers), Math.max(...numbers)),
			chance: own.reduce((sum, { chance }) => sum + chance, 0),
		};
	}).sort((x, y) => y.chance - x.chance);
	const sound = read.number({ branches: [], added: [] });
	const { what, from, to, when } = question;
	return {
		question: { what, from, to, when },
		value: undefined,
		shows,
		sound: rangeText(question, Number.isNaN(sound) ? Number.POSITIVE_INFINITY : sound, sound),
	};
}

/** What a reading would have to show to speak against the fault, and how likely that is if another is there. */
function refutation(
	watch: Watch,
	fault: Weighed,
	leading: readonly Weighed[],
	question: Question,
): Refutation | undefined {
	const read = watch.reader.of(question);
	if (read === undefined) return undefined;
	const others = leading.filter((w) => w.fault?.id !== fault.fault!.id);
	const entries = [fault, ...others].flatMap((w, h) =>
		w.patterns.map(({ pattern, chance }) => ({
			...{ own: h === 0, chance: chance * (h === 0 ? 1 : w.posterior) },
			value: read.number(pattern.change),
		})),
	);
	const values = Float64Array.from(entries, ({ value }) => value);
	const { count, outcomes } = outcomesOf(question.what, read.deviation(), values);
	const own = new Float64Array(count);
	const other = new Float64Array(count);
	entries.forEach((entry, e) => {
		(entry.own ? own : other)[outcomes[e]!]! += entry.chance;
	});
	const expected = [...own.keys()].filter((outcome) => own[outcome]! >= UNLIKELY);
	const all = other.reduce((sum, chance) => sum + chance, 0);
	const outside = all - expected.reduce((sum, outcome) => sum + other[outcome]!, 0);
	if (all === 0 || outside <= 0) return undefined;
	const ranges = expected.map((outcome) => {
		const numbers = entries.flatMap(({ own: mine, value }, e) =>
			mine && outcomes[e] === outcome && !Number.isNaN(value) ? [value] : [],
		);
		return rangeText(question, Math.min(...numbers), Math.max(...numbers));
	});
	const { what, from, to, when } = question;
	return {
		question: { what, from, to, when },
		text: `${questionText(watch.circuit.loom, question)}: anything but ${ranges.join(" or ")}`,
		chance: outside / all,
	};
}
