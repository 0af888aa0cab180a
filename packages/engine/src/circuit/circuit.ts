/**
 * A loom assembled into a network: numbered points, branches, one pattern and one symbolic analysis.
 *
 * Unknowns are the potentials of all points but the body metal, which is the reference. Every source stands
 * behind its own resistance, so the conductance matrix is symmetric and positive definite; the few sources that
 * follow a difference elsewhere come on top of it (controls.ts).
 */
import { analyse, type NetworkPattern, networkPattern, type Symbolic } from "@loomwright/linalg";
import type { AutomatonSpec, BranchSpec, BranchState, Owner } from "../devices/index.js";
import type { Loom } from "../loom/index.js";
import type { Control } from "./controls.js";
import { BODY } from "./names.js";
import { buildNetwork, type Only } from "./network.js";
import { settingsOf } from "./settings.js";
import { Standings } from "./standings.js";

/** Node number of the reference (body metal). */
export const REFERENCE = -1;

export interface Branch {
	/** Node numbers, {@link REFERENCE} for the body metal. */
	readonly a: number;
	readonly b: number;
	readonly spread: number;
	readonly emfSpread: number;
	readonly owner: Owner;
}

export interface Automaton {
	readonly spec: AutomatonSpec;
	readonly branches: readonly number[];
	readonly watch: readonly (readonly [number, number])[];
}

/** The network in one condition, before the automata have settled: what each branch is at rest. */
export interface Standing {
	readonly condition: string;
	/** Siemens of every branch, automata at rest. */
	readonly siemens: Float64Array;
	/** Volts of every branch's source. */
	readonly emf: Float64Array;
	readonly automata: readonly Automaton[];
	/** Sources that follow a difference. */
	readonly controls: readonly Control[];
}

/** A branch of a loom that differs from the circuit's own: what it would be there. */
export interface Difference {
	readonly branch: number;
	readonly to: BranchState;
}

/** Points and branches, as far as solving needs to know them. */
export interface Topology {
	/** Names of the points, for messages; the body metal is not among them. */
	readonly nodes: readonly string[];
	readonly branches: readonly Branch[];
	readonly pattern: NetworkPattern;
	readonly symbolic: Symbolic;
}

export class Circuit implements Topology {
	readonly nodes: readonly string[];
	readonly branches: readonly Branch[];
	/** The branch numbers of each wire, contact, part and joint. */
	readonly branchesOf: ReadonlyMap<string, readonly number[]>;
	readonly pattern: NetworkPattern;
	readonly symbolic: Symbolic;
	/** For each variant loom given: how its branches differ from this loom's. */
	readonly variants: ReadonlyMap<string, readonly Difference[]>;
	readonly #index: Map<string, number>;
	readonly #known = new Map<string, Standing>();
	readonly #standings: Standings;

	/**
	 * @param variants looms that this one is compared with (a recipe step left out): their points and branches
	 *   are put into the pattern as open branches, so that each becomes a change of values only
	 */
	constructor(
		readonly loom: Loom,
		variants: ReadonlyMap<string, Loom> = new Map(),
	) {
		const none = new Map<string, string>();
		const base = buildNetwork(loom, none);
		const specs = [...base.branches];
		const numbers = new Map(specs.map((spec, k) => [keyOf(spec), k]));
		const found = [...variants].map(([name, other]) => {
			const here = buildNetwork(loom, none, differing(loom, other)).branches;
			const there = buildNetwork(other, none, differing(other, loom)).branches;
			for (const spec of there) if (!numbers.has(keyOf(spec))) numbers.set(keyOf(spec), specs.push(spec) - 1);
			return { name, here, there };
		});
		const index = new Map<string, number>([[BODY, REFERENCE]]);
		const nodes: string[] = [];
		const number = (name: string) => {
			let k = index.get(name);
			if (k === undefined) {
				k = nodes.push(name) - 1;
				index.set(name, k);
			}
			return k;
		};
		this.branches = specs.map((spec) => ({
			a: number(spec.a),
			b: number(spec.b),
			spread: spec.spread,
			emfSpread: spec.emfSpread ?? 0,
			owner: spec.owner,
		}));
		for (const contact of loom.contacts.keys()) number(contact);
		for (const joint of loom.joints.keys()) number(joint);
		this.nodes = nodes;
		this.#index = index;
		this.#standings = new Standings(loom, base, specs, (name) => index.get(name)!);
		this.pattern = networkPattern(
			nodes.length,
			this.branches.map((b) => b.a),
			this.branches.map((b) => b.b),
		);
		this.symbolic = analyse(nodes.length, this.pattern.colPtr, this.pattern.rowIdx);
		this.branchesOf = groupByOwner(this.branches);
		this.variants = new Map(found.map((f) => [f.name, differences(f.here, f.there, numbers)]));
	}

	/** Node number of a named point, or undefined when this loom has no such point. */
	node(name: string): number | undefined {
		return this.#index.get(name);
	}

	/**
	 * What every branch is in a condition, listed or said in place (settings.ts).
	 * @throws RangeError naming the known conditions when there is none of that name
	 */
	standing(condition: string): Standing {
		const known = this.#known.get(condition);
		if (known) return known;
		const standing = this.standingOf(settingsOf(this.loom, condition), condition);
		this.#known.set(condition, standing);
		return standing;
	}

	/**
	 * What every branch is under these settings, listed as a condition of the loom or not. Not kept.
	 * @param settings part, connector or contact to state; what is not set stands in its kind's default
	 * @param name what the standing is called in messages
	 */
	standingOf(settings: ReadonlyMap<string, string>, name: string): Standing {
		return this.#standings.under(settings, name);
	}
}

/** A branch is known across looms by its ends and its owner's element. */
function keyOf(spec: BranchSpec): string {
	return `${spec.a}|${spec.b}|${spec.owner.what}|${spec.owner.element}`;
}

function groupByOwner(branches: readonly Branch[]): Map<string, number[]> {
	const groups = new Map<string, number[]>();
	const put = (id: string, k: number) => {
		const list = groups.get(id);
		if (list) list.push(k);
		else groups.set(id, [k]);
	};
	branches.forEach((branch, k) => {
		put(branch.owner.id, k);
	});
	return groups;
}

/** What stands in `loom` that is not, or not the same, in `other`. */
function differing(loom: Loom, other: Loom): Only {
	const parts = unlike(loom.parts, other.parts);
	// Asked of dozens of looms that share all but a few rows: no lists are made on the way.
	if (loom.contacts !== other.contacts)
		for (const contact of loom.contacts.values()) {
			const theirs = other.contacts.get(contact.id);
			if (theirs !== contact && !same(contact, theirs)) parts.add(contact.part);
		}
	return { parts, wires: unlike(loom.wires, other.wires), joints: unlike(loom.joints, other.joints) };
}

/** Names of rows that are not, or not the same, among the other ones. */
function unlike<Row>(own: ReadonlyMap<string, Row>, theirs: ReadonlyMap<string, Row>): Set<string> {
	const names = new Set<string>();
	if (own === theirs) return names;
	for (const [name, row] of own) {
		const other = theirs.get(name);
		if (other !== row && !same(row, other)) names.add(name);
	}
	return names;
}

/** Rows of looms are plain data; those that no step changed are the very same objects. */
function same(x: unknown, y: unknown): boolean {
	if (x === y) return true;
	if (typeof x !== "object" || typeof y !== "object" || x === null || y === null) return false;
	const keys = Object.keys(x);
	if (keys.length !== Object.keys(y).length) return false;
	return keys.every((key) => same((x as Record<string, unknown>)[key], (y as Record<string, unknown>)[key]));
}

/** @param base, other the branches of what differs, on either side */
function differences(
	base: readonly BranchSpec[],
	other: readonly BranchSpec[],
	numbers: ReadonlyMap<string, number>,
): Difference[] {
	const there = new Map(other.map((spec) => [numbers.get(keyOf(spec))!, spec]));
	const result: Difference[] = [];
	for (const spec of base) {
		const branch = numbers.get(keyOf(spec))!;
		const now = there.get(branch);
		there.delete(branch);
		const to = now === undefined ? { siemens: 0, emf: 0 } : { siemens: now.siemens, emf: now.emf ?? 0 };
		if (to.siemens !== spec.siemens) result.push({ branch, to });
	}
	for (const [branch, spec] of there)
		result.push({ branch, to: { siemens: spec.siemens, emf: spec.emf ?? 0 } });
	return result;
}
