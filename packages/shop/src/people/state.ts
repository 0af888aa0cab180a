/** How a job stands, derived from its history alone: steps done and signed, holds, what contradicts what. */
import type { Entry } from "../store/entry/append.js";
import type { AcceptedFinding } from "../store/entry/kinds.js";
import { apart, inCausalOrder, knew } from "./causes.js";
import { CRITICAL } from "./sorts.js";

/** Who answers for a step. */
export interface Signature {
	readonly entry: string;
	readonly person: string;
	readonly account: string;
	/** `second`: counts only beside one who may sign alone. */
	readonly ability: "alone" | "second";
	readonly time: string;
}

export interface StepState {
	readonly step: string;
	/** Empty: not known. */
	readonly sort: string;
	/** Entries that say it was done, by whom. */
	readonly done: readonly { readonly entry: string; readonly person: string; readonly time: string }[];
	readonly signatures: readonly Signature[];
	/** How many people must sign. */
	readonly needs: 1 | 2;
	/** Done, enough have signed, and no hold is on it. */
	readonly complete: boolean;
	/** What is still missing, in words; empty when complete. */
	readonly missing: string;
}

export interface HoldState {
	readonly entry: string;
	/** Empty: the whole job. */
	readonly step: string;
	readonly text: string;
	readonly person: string;
	readonly time: string;
	/** Id of the entry that lifted it; empty while it is on. */
	readonly lifted: string;
}

/** Two entries on one step, each written without knowing of the other. */
export interface Clash {
	readonly step: string;
	readonly entries: readonly [string, string];
	readonly people: readonly [string, string];
	/** Id of a later entry on the step by someone who knew of both; empty while nobody has looked. */
	readonly settled: string;
}

/** What a rule found, accepted as it was then by a person who answers for it. */
export interface FindingAcceptance extends AcceptedFinding {
	readonly entry: string;
	readonly person: string;
	readonly account: string;
	readonly role: string;
	readonly time: string;
}

export interface JobState {
	readonly steps: readonly StepState[];
	readonly holds: readonly HoldState[];
	readonly clashes: readonly Clash[];
	/** Ids of entries that were taken back, to the id of the correction. */
	readonly corrected: Readonly<Record<string, string>>;
	/** Ids of acceptances of the car that stand. */
	readonly accepted: readonly string[];
	/** Acceptances of findings that stand, the newest last. Whether they still cover what is found, the rules say. */
	readonly acceptedFindings: readonly FindingAcceptance[];
}

type Of<K extends Entry["kind"]> = Extract<Entry, { kind: K }>;

/** @param entries the whole history, in order of place */
export function jobState(entries: readonly Entry[]): JobState {
	const ordered = inCausalOrder(entries);
	const corrected = corrections(ordered);
	const standing = ordered.filter(({ id, kind }) => !corrected.has(id) && kind !== "correction");
	const holds = holdsOf(standing);
	const names = [...new Set(standing.filter(isStep).map(({ body }) => body.step))];
	return {
		steps: names.map((name) => stepState(name, standing, holds)),
		holds,
		clashes: clashesOf(standing),
		corrected: Object.fromEntries(corrected),
		accepted: standing
			.filter((entry) => entry.kind === "acceptance" && !("finding" in entry.body))
			.map(({ id }) => id),
		acceptedFindings: standing.flatMap(acceptanceOf),
	};
}

function acceptanceOf(entry: Entry): FindingAcceptance[] {
	if (entry.kind !== "acceptance" || !("finding" in entry.body)) return [];
	const { id, person, account, standing, time, body } = entry;
	return [{ ...body, entry: id, person, account, role: standing?.role ?? "", time }];
}

const isStep = (entry: Entry): entry is Of<"step"> | Of<"sign-off"> =>
	entry.kind === "step" || entry.kind === "sign-off";

/** Entry taken back to its correction. A correction that is itself taken back takes nothing back. */
function corrections(ordered: readonly Entry[]): Map<string, string> {
	const found = new Map<string, string>();
	for (const entry of ordered.toReversed())
		if (entry.kind === "correction" && !found.has(entry.id)) found.set(entry.body.of, entry.id);
	return found;
}

function holdsOf(standing: readonly Entry[]): HoldState[] {
	const lifts = new Map<string, string>();
	for (const entry of standing)
		if (entry.kind === "lift" && !lifts.has(entry.body.hold)) lifts.set(entry.body.hold, entry.id);
	return standing
		.filter((entry): entry is Of<"hold"> => entry.kind === "hold")
		.map(({ id, person, time, body }) => ({
			entry: id,
			...{ step: body.step ?? "", text: body.text, person, time },
			lifted: lifts.get(id) ?? "",
		}));
}

function stepState(step: string, standing: readonly Entry[], holds: readonly HoldState[]): StepState {
	const own = standing.filter(isStep).filter((entry) => entry.body.step === step);
	const sort = sortOf(own);
	const done = own
		.filter(({ kind }) => kind === "step")
		.map(({ id, person, time }) => ({ entry: id, person, time }));
	const signatures = own
		.filter(({ kind }) => kind === "sign-off")
		.map(({ id, person, account, time, standing: by }) => ({
			...{ entry: id, person, account, time },
			ability: by?.ability ?? "second",
		}));
	const needs = CRITICAL.has(sort) ? 2 : 1;
	const missing = missingOf(done.length > 0, signatures, needs, holdOn(step, holds));
	return { step, sort, done, signatures, needs, complete: missing === "", missing };
}

/** A step is of a critical sort once anyone's entry says so. */
function sortOf(own: readonly Entry[]): string {
	const sorts = own.map(({ standing }) => standing?.sort ?? "").filter((sort) => sort !== "");
	return sorts.find((sort) => CRITICAL.has(sort)) ?? sorts.at(-1) ?? "";
}

/** The first hold that is on a step, or on the whole job. */
export const holdOn = (step: string, holds: readonly HoldState[]): HoldState | undefined =>
	holds.find((hold) => hold.lifted === "" && (hold.step === "" || hold.step === step));

function missingOf(
	done: boolean,
	signatures: readonly Signature[],
	needs: 1 | 2,
	hold: HoldState | undefined,
): string {
	if (hold) return `on hold: ${hold.text}`;
	if (!done) return "nobody has said that it was done";
	if (signatures.length === 0) return needs === 2 ? "two people must sign" : "nobody has signed";
	if (!signatures.some(({ ability }) => ability === "alone"))
		return "someone who may sign alone must sign too";
	return distinct(signatures) < needs ? "a second person must sign" : "";
}

const distinct = (signatures: readonly Signature[]): number =>
	new Set(signatures.map(({ account, person }) => account || person.trim().toLowerCase())).size;

/** Two sign-offs agree; every other two entries on one step that did not know of each other may not. */
function clashesOf(standing: readonly Entry[]): Clash[] {
	const byStep = new Map<string, Entry[]>();
	for (const entry of standing) {
		const step = stepOf(entry);
		if (step !== "") byStep.set(step, [...(byStep.get(step) ?? []), entry]);
	}
	return [...byStep].flatMap(([step, own]) => {
		const clashes: Clash[] = [];
		for (const [k, b] of own.entries())
			for (const a of own.slice(0, k)) {
				if (!apart(a, b) || (a.kind === "sign-off" && b.kind === "sign-off")) continue;
				const settled = own.find((entry) => knew(entry, a) && knew(entry, b))?.id ?? "";
				clashes.push({ step, entries: [a.id, b.id], people: [a.person, b.person], settled });
			}
		return clashes;
	});
}

/** What decides how a step stands: a photo or a note beside it contradicts nothing. */
function stepOf(entry: Entry): string {
	const { kind, body } = entry;
	return kind === "step" || kind === "sign-off" || kind === "hold" || kind === "reading"
		? (body.step ?? "")
		: "";
}

/** How many steps of each sort a person signed under someone who may sign alone, over whole histories. */
export function supervised(account: string, jobs: Iterable<readonly Entry[]>): Map<string, number> {
	const counts = new Map<string, number>();
	for (const entries of jobs)
		for (const { sort, signatures, done } of jobState(entries).steps) {
			const own = signatures.some((one) => one.account === account && one.ability === "second");
			const other = signatures.some((one) => one.account !== account && one.ability === "alone");
			if (own && other && done.length > 0) counts.set(sort, (counts.get(sort) ?? 0) + 1);
		}
	return counts;
}
