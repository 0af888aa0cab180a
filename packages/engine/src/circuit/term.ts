/** What a change, and the automata that moved, make of the conductors of a kept point. */
import type { BranchState } from "../devices/index.js";
import { type Change, changed } from "./changes.js";
import type { Topology } from "./circuit.js";
import type { Operating } from "./operating.js";
import type { Shift } from "./shift.js";

/** One conductor's change: siemens and source amperes added. */
export interface Term {
	readonly a: number;
	readonly b: number;
	readonly dg: number;
	readonly dh: number;
	/** Branch number, or -1 for an added conductor. */
	readonly branch: number;
	/** Siemens before and after. */
	readonly before: number;
	readonly after: number;
	/** Source volts after. */
	readonly emf: number;
	/** Where the change stands in for one of another branch of its chain. */
	readonly shift: Shift | undefined;
}

/** Everything that differs from the point under a change, with the automata in `states`. */
export function termsOf(
	point: Operating<Topology>,
	dead: boolean,
	change: Change,
	states: Uint8Array,
): Term[] {
	const terms: Term[] = [];
	if (states === point.states)
		for (const c of change.branches) {
			const now = changed(c, point.siemens[c.branch]!, point.emf[c.branch]!);
			put(terms, point, dead, c.branch, now);
		}
	else for (const [branch, now] of become(point, change, states)) put(terms, point, dead, branch, now);
	for (const { a, b, siemens } of change.added)
		terms.push({ a, b, dg: siemens, dh: 0, branch: -1, before: 0, after: siemens, emf: 0, shift: undefined });
	return terms;
}

/** What branches become by the automata that moved and by the change, which has the last word. */
function become(point: Operating<Topology>, change: Change, states: Uint8Array): Map<number, BranchState> {
	const { siemens, emf, standing } = point;
	const to = new Map<number, BranchState>();
	for (let k = 0; k < states.length; k++) {
		if (states[k] === point.states[k]) continue;
		const { branches, spec } = standing.automata[k]!;
		const row = spec.table[states[k]!]!;
		for (let at = 0; at < branches.length; at++) to.set(branches[at]!, row[at]!);
	}
	for (const c of change.branches) {
		const own = to.get(c.branch);
		to.set(c.branch, changed(c, own?.siemens ?? siemens[c.branch]!, own?.emf ?? emf[c.branch]!));
	}
	return to;
}

function put(
	terms: Term[],
	point: Operating<Topology>,
	dead: boolean,
	branch: number,
	{ siemens: after, emf }: BranchState,
): void {
	const before = point.siemens[branch]!;
	const dg = after - before;
	const dh = dead ? 0 : after * emf - before * point.emf[branch]!;
	if (dg === 0 && dh === 0) return;
	const { a, b } = point.circuit.branches[branch]!;
	terms.push({ a, b, dg, dh, branch, before, after, emf, shift: undefined });
}

/** A hold put on a node, or taken away (negative siemens). */
export function hold(node: number, siemens: number): Term {
	const [before, after] = siemens < 0 ? [-siemens, 0] : [0, siemens];
	return { a: node, b: -1, dg: siemens, dh: 0, branch: -1, before, after, emf: 0, shift: undefined };
}
