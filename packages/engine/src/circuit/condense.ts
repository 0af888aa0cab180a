/**
 * A circuit with its unbranched runs of loom taken together: pin, crimp, wire, crimp, pin become one branch.
 *
 * Nothing is lost: series resistances add, and an opening or added ohms anywhere in a run does the same outside it.
 * Points that someone looks at, or that a change needs, are kept. A car's network shrinks to about a third, and
 * changes of one run's joints are found once.
 */
import { analyse, type NetworkPattern, networkPattern, type Symbolic } from "@loomwright/linalg";
import type { AddedBranch, BranchChange, Change } from "./changes.js";
import type { Branch, Circuit, Standing, Topology } from "./circuit.js";
import type { Probe } from "./probes.js";

/** Where a branch of the full circuit went: its run, and whether it points the same way. */
interface Place {
	readonly run: number;
	readonly along: 1 | -1;
}

export class Condensed implements Topology {
	readonly nodes: readonly string[];
	readonly branches: readonly Branch[];
	readonly pattern: NetworkPattern;
	readonly symbolic: Symbolic;
	/** Branches of the full circuit in each run. */
	readonly #runs: readonly (readonly number[])[];
	readonly #placeOf: readonly Place[];
	/** Node number here of each full node, or undefined where it lies inside a run. */
	readonly #nodeOf: readonly (number | undefined)[];
	readonly #standings = new Map<string, Standing>();
	readonly #changes = new Map<string, Change>();
	/** By run: its opening, and by the ohms added in series with it. */
	readonly #opened: (Change | undefined)[];
	readonly #inSeries: (Map<number, Change> | undefined)[];

	/** @param keep full node numbers that must stay points of their own */
	constructor(
		readonly full: Circuit,
		keep: ReadonlySet<number>,
	) {
		const rest = full.standing([...full.loom.conditions.keys()][0]!);
		const kept = new Set(keep);
		for (const { a, b } of rest.controls) for (const node of [a, b]) if (node >= 0) kept.add(node);
		const { runs, placeOf, ends } = findRuns(full, kept);
		this.#runs = runs;
		this.#opened = new Array(runs.length);
		this.#inSeries = new Array(runs.length);
		this.#placeOf = placeOf;
		const nodeOf = new Array<number | undefined>(full.nodes.length);
		const nodes: string[] = [];
		const number = (node: number): number => {
			if (node < 0) return node;
			nodeOf[node] ??= nodes.push(full.nodes[node]!) - 1;
			return nodeOf[node];
		};
		this.branches = runs.map((run, k) => {
			const [a, b] = ends[k]!;
			return { ...spreadOf(full, run, rest.siemens), a: number(a), b: number(b) };
		});
		for (const node of kept) number(node);
		this.nodes = nodes;
		this.#nodeOf = nodeOf;
		const from = this.branches.map((b) => b.a);
		this.pattern = networkPattern(
			nodes.length,
			from,
			this.branches.map((b) => b.b),
		);
		this.symbolic = analyse(nodes.length, this.pattern.colPtr, this.pattern.rowIdx);
	}

	/** What every run is in a condition. @throws RangeError as `Circuit.standing` */
	standing(condition: string): Standing {
		const known = this.#standings.get(condition);
		if (known) return known;
		const full = this.full.standing(condition);
		const siemens = Float64Array.from(this.#runs, (run) => seriesSiemens(run, full.siemens));
		// Only devices have sources, and a device's branch is a run of its own.
		const emf = Float64Array.from(this.#runs, (run) => full.emf[run[0]!]!);
		const automata = full.automata.map((automaton) => ({
			spec: automaton.spec,
			branches: automaton.branches.map((branch) => this.#placeOf[branch]!.run),
			watch: automaton.watch.map(([a, b]) => [this.node(a), this.node(b)] as const),
		}));
		const controls = full.controls.map((control) => ({
			...control,
			branch: this.#placeOf[control.branch]!.run,
			a: this.node(control.a),
			b: this.node(control.b),
		}));
		const standing = { condition, siemens, emf, automata, controls };
		this.#standings.set(condition, standing);
		return standing;
	}

	/** Node number here of a full node. @throws RangeError where it was not kept */
	node(full: number): number {
		if (full < 0) return full;
		const node = this.#nodeOf[full];
		if (node === undefined)
			throw new RangeError(`${this.full.nodes[full]} lies inside a run: it was not kept`);
		return node;
	}

	probe(probe: Probe): Probe {
		if (probe.kind !== "amps") return { kind: probe.kind, a: this.node(probe.a), b: this.node(probe.b) };
		const branches = probe.branches.map(({ branch, sign }) => {
			const { run, along } = this.#placeOf[branch]!;
			return { branch: run, sign: (sign * along) as 1 | -1 };
		});
		return { kind: "amps", branches };
	}

	/** The change here of a change there; the same object for all changes that come to the same here. */
	change({ branches, added }: Change): Change {
		// Nearly all changes are of one conductor.
		const found = branches.length === 1 ? [this.#inRun(branches[0]!)] : this.#inRuns(branches);
		const [only] = found;
		if (only !== undefined && found.length === 1 && added.length === 0) {
			if ("seriesOhms" in only) return this.#series(only.branch, only.seriesOhms);
			if (only.siemens === 0 && only.emf === undefined) return this.opened(only.branch);
		}
		const links = added.map((link): AddedBranch => ({ ...link, a: this.node(link.a), b: this.node(link.b) }));
		return this.#interned(found, links);
	}

	#series(run: number, seriesOhms: number): Change {
		let known = this.#inSeries[run];
		if (known === undefined) {
			known = new Map();
			this.#inSeries[run] = known;
		}
		let change = known.get(seriesOhms);
		if (change === undefined) {
			change = { branches: [{ branch: run, seriesOhms }], added: [] };
			known.set(seriesOhms, change);
		}
		return change;
	}

	#interned(branches: readonly BranchChange[], added: readonly AddedBranch[]): Change {
		const key = keyOf(branches, added);
		let known = this.#changes.get(key);
		if (known === undefined) {
			known = { branches, added };
			this.#changes.set(key, known);
		}
		return known;
	}

	/** A run opened; the same object as `change` gives for an opening in it. */
	opened(run: number): Change {
		this.#opened[run] ??= { branches: [{ branch: run, siemens: 0 }], added: [] };
		return this.#opened[run];
	}

	/** What a change of a branch comes to in its run. */
	#inRun(one: BranchChange): BranchChange {
		const { run } = this.#placeOf[one.branch]!;
		if ("seriesOhms" in one) return { branch: run, seriesOhms: one.seriesOhms };
		if (this.#runs[run]!.length === 1) return { ...one, branch: run };
		if (one.siemens === 0) return { branch: run, siemens: 0 };
		throw new RangeError(`branch ${one.branch} lies inside a run: its ends were not kept`);
	}

	#inRuns(changes: readonly BranchChange[]): BranchChange[] {
		/** Per run: ohms added (Infinity for an opening), or what its only branch becomes. */
		const ohms = new Map<number, number>();
		const become = new Map<number, BranchChange>();
		for (const change of changes) {
			const one = this.#inRun(change);
			if ("seriesOhms" in one) ohms.set(one.branch, (ohms.get(one.branch) ?? 0) + one.seriesOhms);
			else if (this.#runs[one.branch]!.length === 1) become.set(one.branch, one);
			else ohms.set(one.branch, Number.POSITIVE_INFINITY);
		}
		const result = [...become.values()];
		for (const [branch, added] of ohms)
			result.push(
				added === Number.POSITIVE_INFINITY ? { branch, siemens: 0 } : { branch, seriesOhms: added },
			);
		return result.sort((x, y) => x.branch - y.branch);
	}
}

/** The same for the same change; a single link in few letters. */
function keyOf(branches: readonly BranchChange[], added: readonly AddedBranch[]): string {
	const [link, other] = added;
	if (branches.length === 0 && link !== undefined && other === undefined)
		return `link ${link.a} ${link.b} ${link.siemens}`;
	return JSON.stringify([branches, added]);
}

/** Full nodes that must be kept for a change to be said in runs. */
export function nodesNeeded(circuit: Circuit, change: Change): number[] {
	const nodes = change.added.flatMap(({ a, b }) => [a, b]);
	for (const one of change.branches) {
		// An opening or added ohms act on the run as a whole; anything else on this very branch.
		if ("seriesOhms" in one || one.siemens === 0) continue;
		const { a, b } = circuit.branches[one.branch]!;
		nodes.push(a, b);
	}
	return nodes.filter((node) => node >= 0);
}

function seriesSiemens(run: readonly number[], siemens: Float64Array): number {
	if (run.length === 1) return siemens[run[0]!]!;
	let ohms = 0;
	for (const branch of run) {
		if (siemens[branch] === 0) return 0;
		ohms += 1 / siemens[branch]!;
	}
	return 1 / ohms;
}

/** The first branch's owner, and the relative deviation of independent resistances in series. */
function spreadOf(full: Circuit, run: readonly number[], siemens: Float64Array): Branch {
	const first = full.branches[run[0]!]!;
	if (run.length === 1) return first;
	let ohms = 0;
	let square = 0;
	for (const branch of run) {
		const own = siemens[branch] ? 1 / siemens[branch]! : 0;
		ohms += own;
		square += (own * full.branches[branch]!.spread) ** 2;
	}
	return { ...first, spread: ohms === 0 ? first.spread : Math.sqrt(square) / ohms };
}

interface Runs {
	readonly runs: number[][];
	readonly placeOf: Place[];
	readonly ends: (readonly [number, number])[];
}

/** Runs of loom branches (no device) through points where just two branches meet. O(nodes + branches). */
function findRuns(full: Circuit, keep: ReadonlySet<number>): Runs {
	const { branches } = full;
	const around: number[][] = full.nodes.map(() => []);
	branches.forEach(({ a, b }, k) => {
		if (a >= 0) around[a]!.push(k);
		if (b >= 0) around[b]!.push(k);
	});
	const loose = (k: number) => branches[k]!.owner.what !== "device";
	const inner = (node: number) =>
		node >= 0 && !keep.has(node) && around[node]!.length === 2 && around[node]!.every(loose);
	const placeOf = new Array<Place>(branches.length);
	const runs: number[][] = [];
	const ends: (readonly [number, number])[] = [];
	const other = (k: number, node: number) => (branches[k]!.a === node ? branches[k]!.b : branches[k]!.a);
	const onwards = (k: number, node: number) =>
		around[node]![0] === k ? around[node]![1]! : around[node]![0]!;
	branches.forEach((branch, start) => {
		if (placeOf[start] !== undefined) return;
		let edge = start;
		let begin = branch.a;
		while (inner(begin)) {
			const next = onwards(edge, begin);
			// A ring of inner points only, or a branch back on itself.
			if (next === start || next === edge) break;
			edge = next;
			begin = other(edge, begin);
		}
		const run: number[] = [];
		let node = begin;
		for (;;) {
			placeOf[edge] = { run: runs.length, along: branches[edge]!.a === node ? 1 : -1 };
			run.push(edge);
			node = other(edge, node);
			if (!inner(node)) break;
			const next = onwards(edge, node);
			if (placeOf[next] !== undefined) break;
			edge = next;
		}
		runs.push(run);
		ends.push([begin, node]);
	});
	return { runs, placeOf, ends };
}
