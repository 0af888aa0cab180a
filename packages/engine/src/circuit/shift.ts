/** Changes moved along their chain to its largest resistance (chains.ts says why). */
import type { Chains } from "./chains.js";
import type { Topology } from "./circuit.js";
import type { Operating } from "./operating.js";
import type { Term } from "./term.js";

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
): readonly Term[] {
	const chainOf = (t: Term) => (t.branch < 0 ? -1 : chains.of[t.branch]!);
	const landsInside = (chain: number) =>
		metered.has(chain) ||
		terms.some((t) => t.branch < 0 && [t.a, t.b].some((node) => node >= 0 && chains.nodeOf[node] === chain));
	if (terms.length === 0) return terms;
	const gone = new Set<Term>();
	const result = terms.map((term) => {
		const chain = chainOf(term);
		if (chain < 0 || term.before === 0 || term.emf !== 0 || point.emf[term.branch] !== 0) return term;
		const worked = chains.largest[chain]!;
		if (worked === term.branch || term.before < WORTH * point.siemens[worked]!) return term;
		const others = terms.filter((t) => t !== term && chainOf(t) === chain);
		if (others.length > 1 || (others[0] && others[0].branch !== worked) || landsInside(chain)) return term;
		// The worked branch may itself have changed (a lamp in the chain gone cold): both in one.
		const [also] = others;
		if (also) gone.add(also);
		return moved(point, chains, chain, worked, term, also);
	});
	return gone.size === 0 ? result : result.filter((term) => !gone.has(term));
}

function moved(
	point: Operating<Topology>,
	chains: Chains,
	chain: number,
	worked: number,
	term: Term,
	also: Term | undefined,
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
	return { a, b, dg: after - before, dh, branch: worked, before, after, emf: source, shift };
}
