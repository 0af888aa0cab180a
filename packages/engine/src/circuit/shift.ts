/** Changes moved along their chain to its largest resistance (chains.ts says why). */
import type { Chains } from "./chains.js";
import type { Topology } from "./circuit.js";
import type { Operating } from "./operating.js";
import type { Term, Terms } from "./term.js";

/** A change moved along its chain: points between the true and the worked branch are put right by it. */
export interface Shift {
	readonly chain: number;
	/** Interior nodes whose position lies in [from, to) are between the two branches. */
	readonly from: number;
	readonly to: number;
	/** Ohms added; Infinity for an opening. */
	readonly ohms: number;
	/** End of the worked branch on the true branch's side, and its other end. */
	readonly near: number;
	readonly far: number;
	/** Source of the worked branch after the change, positive at `near`. */
	readonly emf: number;
}

/** Smallest ratio of the true branch's conductance to the worked one's for which moving is worth it. */
const WORTH = 10;

/** The same changes, each worked on the largest resistance of its chain where it is alone there. */
export function shifted(
	point: Operating<Topology>,
	chains: Chains,
	metered: ReadonlySet<number>,
	terms: readonly Term[],
	pool: Terms,
): readonly Term[] {
	let result: (Term | undefined)[] | undefined;
	for (let k = 0; k < terms.length; k++) {
		const term = terms[k]!;
		const chain = term.branch < 0 ? -1 : chains.of[term.branch]!;
		if (chain < 0 || term.before === 0 || term.emf !== 0 || point.emf[term.branch] !== 0) continue;
		const worked = chains.largest[chain]!;
		if (worked === term.branch || term.before < WORTH * point.siemens[worked]!) continue;
		const also = alsoIn(chain, worked, chains, terms, k);
		if (also === undefined || metered.has(chain) || landsInside(chain, chains, terms)) continue;
		// Opened twice, the chain's middle hangs on neither end.
		if (also >= 0 && terms[also]!.after === 0 && term.after === 0) continue;
		result ??= terms.slice();
		// The worked branch may itself have changed (a lamp in the chain gone cold): both in one.
		if (also >= 0) result[also] = undefined;
		result[k] = moved(point, chains, chain, worked, term, terms[also], pool);
	}
	if (result === undefined) return terms;
	return result.length === 1 ? (result as Term[]) : result.filter((term) => term !== undefined);
}

/** Number of the only other term in the chain, if it is the worked branch; -1 for none; else undefined. */
function alsoIn(
	chain: number,
	worked: number,
	chains: Chains,
	terms: readonly Term[],
	own: number,
): number | undefined {
	let also = -1;
	for (let k = 0; k < terms.length; k++) {
		const { branch } = terms[k]!;
		if (k === own || branch < 0 || chains.of[branch] !== chain) continue;
		if (also >= 0 || branch !== worked) return undefined;
		also = k;
	}
	return also;
}

/** True where an added conductor ends inside the chain. */
function landsInside(chain: number, { nodeOf }: Chains, terms: readonly Term[]): boolean {
	for (const { branch, a, b } of terms)
		if (branch < 0 && ((a >= 0 && nodeOf[a] === chain) || (b >= 0 && nodeOf[b] === chain))) return true;
	return false;
}

function moved(
	point: Operating<Topology>,
	chains: Chains,
	chain: number,
	worked: number,
	term: Term,
	also: Term | undefined,
	pool: Terms,
): Term {
	const before = point.siemens[worked]!;
	const now = also?.after ?? before;
	const source = also?.emf ?? point.emf[worked]!;
	const ohms = term.after === 0 ? Number.POSITIVE_INFINITY : 1 / term.after - 1 / term.before;
	const after = term.after === 0 || now === 0 ? 0 : 1 / (1 / now + ohms);
	const { a, b } = point.circuit.branches[worked]!;
	const at = chains.at[worked]!;
	const own = chains.at[term.branch]!;
	// Interior node p lies between branches p and p + 1: the near end is the one towards the true branch.
	const nearAt = at < own ? at : at - 1;
	const near = a >= 0 && chains.nodeOf[a] === chain && chains.nodeAt[a] === nearAt ? a : b;
	const shift: Shift = {
		chain,
		from: Math.min(at, own),
		to: Math.max(at, own),
		ohms,
		near,
		far: near === a ? b : a,
		emf: near === a ? source : -source,
	};
	const dh = after * source - before * point.emf[worked]!;
	return pool.put(a, b, before, after, after - before, dh, worked, source, shift);
}
