/**
 * Ohms between points of a network without sources, sound and under any change.
 *
 * Most faults change one conductor: with z = A^-1 b, s = b'z and w a pair, w'A'^-1 w = w'A^-1 w - dg (w'z)^2 / (1 + dg s)
 * (Sherman, Morrison, 1950): one solve per fault, two look-ups per pair. z is solved for the conductor's own b, so
 * that a milliohm beside kilo-ohms keeps its digits. Opening a bridge or joining two parts changes no reading inside
 * either part; all other changes are solved anew.
 */
import {
	analyse,
	networkPattern,
	type SelectedInverse,
	selectedInverse,
	solveSparse,
} from "@loomwright/linalg";
import { type Bridges, findBridges } from "../circuit/bridges.js";
import { type Components, componentOf } from "../circuit/components.js";
import {
	type AddedBranch,
	type Change,
	CircuitError,
	type Condensed,
	type Operating,
	operate,
	REFERENCE,
	type Topology,
} from "../circuit/index.js";
import { sensitivity } from "../readings/index.js";

/** Leaks up to this many siemens are left out: no workshop meter reads them. */
const LEAK = 1e-8;

/** Volts at one ampere that count as none. */
const UNFELT = 1e-9;

export interface Pair {
	readonly a: number;
	readonly b: number;
}

/** What a change does to readings. */
export interface Under {
	/** Parts of the network (component numbers) in which readings may differ. */
	readonly touched: readonly number[];
	/** Ohms of a pair that reads `sound` ohms without the change; NaN is open, for both. */
	ohms(pair: Pair, sound: number): number;
}

interface Conductor extends Pair {
	readonly branch: number;
	readonly before: number;
	readonly after: number;
}

export class DeadNet {
	readonly #point: Operating<Topology>;
	readonly #bridges: Bridges;
	#inverse: SelectedInverse | undefined;

	/** @param when a condition, its sources taken as 0 V */
	constructor(
		readonly net: Condensed,
		when: string,
	) {
		const rest = net.standing(when);
		const siemens = rest.siemens.slice();
		// Without sources all automata stay at rest.
		for (const { spec, branches } of rest.automata)
			branches.forEach((branch, k) => {
				siemens[branch] = spec.table[0]![k]!.siemens;
			});
		siemens.forEach((g, k) => {
			if (g <= LEAK) siemens[k] = 0;
		});
		this.#point = operate<Topology>(net, { ...rest, siemens, automata: [] }, { dead: true });
		this.#bridges = findBridges(net, this.#point.siemens);
	}

	get components(): Components {
		return this.#point.components;
	}

	/** Ohms (NaN: open) and their standard deviation on a sound car. */
	sound(pair: Pair): { value: number; deviation: number } {
		if (this.#part(pair.a) !== this.#part(pair.b)) return { value: Number.NaN, deviation: 0 };
		const { sourceOhms, deviation } = sensitivity(this.#point, { kind: "ohms", ...pair });
		return { value: sourceOhms, deviation };
	}

	/**
	 * Does the meter's current at this pair pass one of these branches with more than its share?
	 * @param spared branch to the share of the current that may pass
	 */
	passes({ a, b }: Pair, spared: ReadonlyMap<number, number>): boolean {
		if (spared.size === 0 || this.#part(a) !== this.#part(b)) return false;
		const z = this.#across({ a, b });
		return [...spared].some(([branch, most]) => {
			const ends = this.net.branches[branch]!;
			return this.#point.siemens[branch]! * Math.abs(at(z, ends.a) - at(z, ends.b)) > most;
		});
	}

	/** Would opening this branch part the network (or is it open)? */
	cutsOff(branch: number): boolean {
		return this.#point.siemens[branch] === 0 || this.#bridges.is[branch] === 1;
	}

	/**
	 * Tells quickly that a change moves none of a few pairs: a conductor that carries none of the current driven in at
	 * a pair does not move it. False where that cannot be said quickly.
	 */
	deaf(pairs: readonly Pair[]): (change: Change) => boolean {
		const driven = pairs
			.filter(({ a, b }) => this.#part(a) === this.#part(b))
			.map((pair) => this.#across(pair));
		return (change) => {
			const [branch, ...more] = change.branches;
			const [link, ...others] = change.added;
			if (more.length + others.length > 0 || (branch && link)) return false;
			const ends = branch ? this.net.branches[branch.branch] : link;
			if (ends === undefined || this.#part(ends.a) !== this.#part(ends.b)) return false;
			return driven.every((y) => Math.abs(at(y, ends.a) - at(y, ends.b)) < UNFELT);
		};
	}

	/** What a change does here; undefined where it does nothing, as the opening of what is open. */
	under(change: Change): Under | undefined {
		const conductors = this.#conductors(change);
		const added = change.added.filter(({ a, b }) => a !== b);
		if (conductors.length + added.length === 0) return undefined;
		if (conductors.length === 1 && added.length === 0) return this.#altered(conductors[0]!, change);
		if (conductors.length === 0 && added.length === 1) return this.#joined(added[0]!);
		return this.#anew(change, [...conductors, ...added]);
	}

	#part(node: number): number {
		return componentOf(this.#point.components, node);
	}

	#conductors(change: Change): Conductor[] {
		return change.branches.flatMap((one): Conductor[] => {
			const before = this.#point.siemens[one.branch]!;
			const after = "seriesOhms" in one ? before / (1 + before * one.seriesOhms) : one.siemens;
			const { a, b } = this.net.branches[one.branch]!;
			return after === before ? [] : [{ a, b, branch: one.branch, before, after }];
		});
	}

	#altered(conductor: Conductor, change: Change): Under {
		const { a, branch, before, after } = conductor;
		if (before === 0) return this.#anew(change, [conductor]);
		if (after > 0 || this.#bridges.is[branch] === 0) return this.#rankOne(conductor, after - before);
		return {
			touched: [this.#part(a)],
			ohms: (pair, sound) => (this.#bridges.separates(branch, pair.a, pair.b) ? Number.NaN : sound),
		};
	}

	#rankOne({ a, b }: Pair, dg: number): Under {
		const z = this.#across({ a, b });
		const weight = dg / (1 + dg * (at(z, a) - at(z, b)));
		return {
			touched: [this.#part(a)],
			ohms: (pair, sound) => sound - weight * (at(z, pair.a) - at(z, pair.b)) ** 2,
		};
	}

	#joined(link: AddedBranch): Under {
		const { a, b, siemens } = link;
		const one = this.#part(a);
		const two = this.#part(b);
		if (one === two) return this.#rankOne(link, siemens);
		const toA = this.#ohmsTo(a);
		const toB = this.#ohmsTo(b);
		return {
			touched: [one, two],
			ohms: (pair, sound) => {
				const from = this.#part(pair.a);
				const to = this.#part(pair.b);
				if (from === one && to === two) return toA(pair.a) + 1 / siemens + toB(pair.b);
				if (from === two && to === one) return toB(pair.a) + 1 / siemens + toA(pair.b);
				return sound;
			},
		};
	}

	/** Ohms from a node of the same part to this one. */
	#ohmsTo(node: number): (from: number) => number {
		this.#inverse ??= selectedInverse(this.#point.numeric);
		const { diagonal } = this.#inverse;
		const z = this.#across({ a: node, b: REFERENCE });
		return (from) => at(diagonal, from) + at(z, node) - 2 * at(z, from);
	}

	#anew(change: Change, pairs: readonly Pair[]): Under {
		const touched = [...new Set(pairs.flatMap(({ a, b }) => [this.#part(a), this.#part(b)]))];
		const point = settle(this.#point, change);
		const columns = new Map<number, Float64Array>();
		const column = (node: number): Float64Array => {
			let z = columns.get(node);
			if (z === undefined) {
				// The links stand in the factor itself, so it alone is the whole matrix.
				z = node < 0 ? new Float64Array(this.net.nodes.length) : solveSparse(point!.numeric, [node], [1]);
				columns.set(node, z);
			}
			return z;
		};
		return {
			touched,
			ohms: ({ a, b }, sound) => {
				// Where no accurate solution exists nothing is claimed.
				if (point === undefined) return sound;
				if (componentOf(point.components, a) !== componentOf(point.components, b)) return Number.NaN;
				const za = column(a);
				const zb = column(b);
				return at(za, a) + at(zb, b) - 2 * at(za, b);
			},
		};
	}

	/** A^-1 (e_a - e_b); what lies at the reference falls away. */
	#across({ a, b }: Pair): Float64Array {
		const { numeric } = this.#point;
		if (a < 0) return b < 0 ? new Float64Array(this.net.nodes.length) : solveSparse(numeric, [b], [-1]);
		return b < 0 ? solveSparse(numeric, [a], [1]) : solveSparse(numeric, [a, b], [1, -1]);
	}
}

function at(x: Float64Array, node: number): number {
	return node < 0 ? 0 : x[node]!;
}

/** The network under a change by a factor of its own; undefined where it has no accurate solution. */
function settle({ circuit, standing }: Operating<Topology>, change: Change): Operating<Topology> | undefined {
	const { branches, added } = change;
	const extended = added.length === 0 ? circuit : withLinks(circuit, added);
	const siemens = Float64Array.from([...standing.siemens, ...added.map((link) => link.siemens)]);
	const emf = new Float64Array(siemens.length);
	try {
		return operate(extended, { ...standing, siemens, emf }, { change: { branches, added: [] }, dead: true });
	} catch (error) {
		if (error instanceof CircuitError) return undefined;
		throw error;
	}
}

/** Links as branches of the pattern: much stiffer than a tether, they would lose digits as a correction. */
function withLinks({ nodes, branches }: Topology, added: readonly AddedBranch[]): Topology {
	const owner = { what: "device", id: "", element: "" } as const;
	const all = [...branches, ...added.map(({ a, b }) => ({ a, b, spread: 0, emfSpread: 0, owner }))];
	const pattern = networkPattern(
		nodes.length,
		all.map((branch) => branch.a),
		all.map((branch) => branch.b),
	);
	return { nodes, branches: all, pattern, symbolic: analyse(nodes.length, pattern.colPtr, pattern.rowIdx) };
}
