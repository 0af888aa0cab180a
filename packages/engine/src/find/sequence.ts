/**
 * The order of tests that isolates the fault at least expected cost, for outcomes that are certain given the fault.
 *
 * Small problems are solved exactly by dynamic programming over the sets of hypotheses still possible; larger ones by
 * information per cost, looking one test ahead. K. R. Pattipati, M. G. Alexandridis, 'Application of heuristic search
 * and information theory to sequential fault diagnosis', IEEE Trans. SMC 20(4), 1990.
 */

/** Hypotheses with weights, tests with a cost and, for each hypothesis, the outcome it would show. */
export interface TestTable {
	readonly weights: readonly number[];
	readonly tests: readonly {
		readonly cost: number;
		/** Outcome number of each hypothesis. */
		readonly outcomes: readonly number[];
	}[];
}

/** The best first test and what isolating costs on average from there; `test` is -1 where nothing is left to tell. */
export interface Plan {
	readonly test: number;
	/** Expected cost until the possible hypotheses can be told apart no further. */
	readonly cost: number;
	/** True when no order of tests costs less. */
	readonly optimal: boolean;
}

/** Largest number of hypotheses whose subsets are searched exhaustively. */
const EXACT_HYPOTHESES = 14;
/** Tests of which the most informative are looked at one step further where exhaustive search is too much. */
const LOOKED_AT = 6;

export interface PlanOptions {
	/** Most hypotheses whose subsets are searched exhaustively. */
	readonly exhaustive?: number;
}

/** Plans from all hypotheses. Weights need not sum to 1. */
export function planTests(table: TestTable, { exhaustive = EXACT_HYPOTHESES }: PlanOptions = {}): Plan {
	const all = table.weights.map((_, k) => k).filter((k) => table.weights[k]! > 0);
	if (all.length <= exhaustive) return { ...exact(table, all, new Map()), optimal: true };
	return { ...greedy(table, all, 1), optimal: false };
}

/** Expected cost of always taking the test that `planTests` names, for comparison with a known optimum. */
export function expectedCost(table: TestTable, options: PlanOptions = {}, left?: readonly number[]): number {
	const possible = left ?? table.weights.map((_, k) => k).filter((k) => table.weights[k]! > 0);
	const weights = table.weights.map((w, k) => (possible.includes(k) ? w : 0));
	const { test } = planTests({ ...table, weights }, options);
	if (test < 0) return 0;
	const mass = massOf(table, possible);
	let cost = table.tests[test]!.cost;
	for (const part of split(table, possible, test))
		cost += (massOf(table, part) / mass) * expectedCost(table, options, part);
	return cost;
}

function massOf({ weights }: TestTable, set: readonly number[]): number {
	return set.reduce((sum, k) => sum + weights[k]!, 0);
}

/** The hypotheses by the outcome they show. */
function split(table: TestTable, set: readonly number[], test: number): number[][] {
	const parts = new Map<number, number[]>();
	const { outcomes } = table.tests[test]!;
	for (const k of set) {
		const part = parts.get(outcomes[k]!);
		if (part) part.push(k);
		else parts.set(outcomes[k]!, [k]);
	}
	return [...parts.values()];
}

type Step = Pick<Plan, "test" | "cost">;

/** V(S) = min over tests of cost + sum of P(part) V(part); memory by the set as a bit mask. */
function exact(table: TestTable, set: readonly number[], known: Map<number, Step>): Step {
	if (set.length < 2) return { test: -1, cost: 0 };
	const key = set.reduce((mask, k) => mask + 2 ** k, 0);
	const before = known.get(key);
	if (before) return before;
	const mass = massOf(table, set);
	let best: Step = { test: -1, cost: 0 };
	for (let test = 0; test < table.tests.length; test++) {
		const parts = split(table, set, test);
		if (parts.length < 2) continue;
		let { cost } = table.tests[test]!;
		for (const part of parts) {
			if (best.test >= 0 && cost >= best.cost) break;
			cost += (massOf(table, part) / mass) * exact(table, part, known).cost;
		}
		if (best.test < 0 || cost < best.cost) best = { test, cost };
	}
	known.set(key, best);
	return best;
}

/** Bits of the outcome of a test. */
function bitsOf(table: TestTable, parts: readonly (readonly number[])[], mass: number): number {
	let bits = 0;
	for (const part of parts) {
		const p = massOf(table, part) / mass;
		if (p > 0) bits -= p * Math.log2(p);
	}
	return bits;
}

/** Entropy of the hypotheses, in bits: what is still to be found out. */
function entropy(table: TestTable, set: readonly number[]): number {
	return bitsOf(
		table,
		set.map((k) => [k]),
		massOf(table, set),
	);
}

/**
 * Least of: cost + what is then left to find out, at the rate of bits per cost of the best test there.
 * `depth` further tests are looked through before that estimate.
 */
function greedy(table: TestTable, set: readonly number[], depth: number): Step {
	if (set.length < 2) return { test: -1, cost: 0 };
	const mass = massOf(table, set);
	const useful = table.tests
		.map(({ cost }, test) => {
			const parts = split(table, set, test);
			return { test, cost, parts, bits: bitsOf(table, parts, mass) };
		})
		.filter(({ parts }) => parts.length > 1)
		.sort((x, y) => y.bits / y.cost - x.bits / x.cost);
	const [first] = useful;
	if (first === undefined) return { test: -1, cost: 0 };
	if (depth === 0) return { test: first.test, cost: (entropy(table, set) * first.cost) / first.bits };
	let best: Step = { test: -1, cost: Number.POSITIVE_INFINITY };
	for (const { test, cost, parts } of useful.slice(0, LOOKED_AT)) {
		let expected = cost;
		for (const part of parts) expected += (massOf(table, part) / mass) * greedy(table, part, depth - 1).cost;
		if (expected < best.cost) best = { test, cost: expected };
	}
	return best;
}
