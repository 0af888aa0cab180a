/**
 * Seeded networks shaped like a car's wiring, for measuring: circuits run from a supply rail through fuse, connectors
 * and splices to devices and back to ground points on the body. Nearly trees, degree two or three, with a few hubs
 * (body, supply rail, control units) and a few loops. The car has zones, each with its control unit and ground point;
 * a circuit stays in its zone, but for one in ten (assumed, no source).
 *
 * Conductances are orders of magnitude (common practice, no source): crimp 1e3..1e4 S, mated contact 2e2..1e3 S,
 * a wire segment 5..2e2 S, a lamp or motor 1e-2..2 S, a sensor 1e-4..1e-3 S, an input 1e-7..1e-5 S, insulation 1e-8 S.
 */
import { type NetworkPattern, networkPattern } from "@loomwright/linalg";

/** A network of conductances and its assembled matrix. */
export interface Network {
	readonly n: number;
	/** Ends of each edge; -1 is the reference (battery negative). */
	readonly from: number[];
	readonly to: number[];
	readonly siemens: number[];
	readonly pattern: NetworkPattern;
	/** Values of the conductance matrix, in pattern order. */
	readonly values: Float64Array;
	/** Conductance from each node straight to the reference. */
	readonly rowSums: Float64Array;
}

/** Small deterministic generator (mulberry32), uniform on [0, 1). */
export function seeded(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** A network of exactly n nodes (n >= 8). */
export function loomNetwork(n: number, seed: number): Network {
	if (!Number.isInteger(n) || n < 8)
		throw new RangeError(`a network needs a whole number >= 8 of nodes, got ${n}`);
	const random = seeded(seed);
	const between = (low: number, high: number) => low * (high / low) ** random(); // log-uniform
	const pick = (count: number) => Math.floor(random() * count);
	const from: number[] = [];
	const to: number[] = [];
	const siemens: number[] = [];
	const join = (u: number, v: number, g: number) => {
		from.push(u);
		to.push(v);
		siemens.push(g);
	};
	let made = 0;
	const node = () => made++;

	const body = node();
	const rail = node();
	join(body, -1, 1e4); // ground strap
	join(rail, -1, 200); // battery, 5 milliohm inside
	const grounds: number[] = [];
	const units: number[] = [];
	const contacts: number[] = [];
	for (let q = 0; q < Math.max(1, Math.floor(n / 400)); q++) {
		const ground = node();
		join(ground, body, between(1e3, 1e4));
		grounds.push(ground);
		const unit = node(); // ground side of a control unit
		join(unit, ground, between(5, 50));
		units.push(unit);
	}

	/** A run of wire, crimp and contact from u to a new end; returns the end. */
	const run = (u: number, segments: number): number => {
		let at = u;
		for (let s = 0; s < segments && made < n; s++) {
			const kind = s % 3;
			const v = node();
			join(at, v, kind === 0 ? between(1e3, 1e4) : kind === 1 ? between(5, 200) : between(200, 1e3));
			if (kind === 2) contacts.push(v);
			at = v;
		}
		return at;
	};
	for (let zone = 0; made < n; zone = (zone + 1) % units.length) {
		const near = <T>(all: readonly T[]): T => all[random() < 0.1 ? pick(all.length) : zone] as T;
		const supplied = random() < 0.6;
		const source = supplied ? rail : near(units);
		const start = run(source, 3 + pick(6));
		const branches = random() < 0.3 ? 2 + pick(4) : 1;
		for (let b = 0; b < branches && made < n; b++) {
			const end = run(start, 3 + 3 * pick(4));
			const load = supplied ? between(1e-2, 2) : random() < 0.5 ? between(1e-4, 1e-3) : between(1e-7, 1e-5);
			const back = random();
			if (back < 0.25) join(end, near(units), load);
			else if (back < 0.35) join(end, body, load);
			else if (made < n) {
				const low = node();
				join(end, low, load);
				const home = run(low, 2 + pick(4));
				join(home, near(grounds), between(1e3, 1e4));
			} else join(end, body, load);
		}
	}
	// a few loops: twin feeds, shared screens, and insulation between neighbouring contacts
	for (let q = 0; q < Math.floor(n / 50); q++) {
		const at = pick(Math.max(1, contacts.length - 12));
		const u = contacts[at];
		const v = contacts[Math.min(contacts.length - 1, at + 1 + pick(10))];
		if (u !== undefined && v !== undefined && u !== v) join(u, v, q % 4 === 0 ? between(5, 200) : 1e-8);
	}
	return { n, from, to, siemens, ...assemble(n, from, to, siemens) };
}

function assemble(n: number, from: number[], to: number[], siemens: number[]) {
	const pattern = networkPattern(n, from, to);
	const values = new Float64Array(pattern.rowIdx.length);
	const rowSums = new Float64Array(n);
	for (let e = 0; e < from.length; e++) {
		const u = from[e] as number;
		const v = to[e] as number;
		const g = siemens[e] as number;
		values[pattern.diagonal[u] as number]! += g;
		if (v < 0) {
			rowSums[u]! += g;
			continue;
		}
		values[pattern.diagonal[v] as number]! += g;
		values[pattern.edge[e] as number]! -= g;
	}
	return { pattern, values, rowSums };
}

/** Both triangles of a symmetric matrix in compressed columns, rows ascending, as general solvers want it. */
export function fullMatrix(network: Network): {
	colPtr: Int32Array;
	rowIdx: Int32Array;
	values: Float64Array;
} {
	const { n, pattern } = network;
	const colPtr = new Int32Array(n + 1);
	const each = (visit: (i: number, j: number, s: number) => void) => {
		for (let j = 0; j < n; j++) {
			for (let s = pattern.colPtr[j] as number; s < (pattern.colPtr[j + 1] as number); s++) {
				const i = pattern.rowIdx[s] as number;
				visit(i, j, s);
				if (i !== j) visit(j, i, s);
			}
		}
	};
	each((_, j) => {
		colPtr[j + 1]! += 1;
	});
	for (let j = 0; j < n; j++) colPtr[j + 1]! += colPtr[j] as number;
	const rows: { i: number; s: number }[][] = Array.from({ length: n }, () => []);
	each((i, j, s) => rows[j]!.push({ i, s }));
	const rowIdx = new Int32Array(colPtr[n] as number);
	const values = new Float64Array(rowIdx.length);
	let top = 0;
	for (const column of rows) {
		column.sort((a, b) => a.i - b.i);
		for (const { i, s } of column) {
			rowIdx[top] = i;
			values[top++] = network.values[s] as number;
		}
	}
	return { colPtr, rowIdx, values };
}
