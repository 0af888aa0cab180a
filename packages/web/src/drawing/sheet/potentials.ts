/**
 * Potentials of a resistor network with some points held, by conjugate gradients with Jacobi scaling
 * (Hestenes and Stiefel 1952). For drawing only: the car's own network is the engine's to solve.
 */

export interface Edge {
	readonly a: string;
	readonly b: string;
	readonly conductance: number;
}

/** Of the largest residual at the start. */
const TOLERANCE = 1e-9;

/**
 * @param held potentials given; all other points are solved for
 * @param leak conductance from every point to potential 0, above 0: the matrix is then positive definite
 * Cost O(edges) a step, at most as many steps as points.
 */
export function potentials(
	names: readonly string[],
	edges: readonly Edge[],
	held: ReadonlyMap<string, number>,
	leak: number,
): Map<string, number> {
	const free = names.filter((name) => !held.has(name));
	const index = new Map(free.map((name, k) => [name, k]));
	const diagonal = new Float64Array(free.length).fill(leak);
	const right = new Float64Array(free.length);
	const inner: (readonly [number, number, number])[] = [];
	for (const { a, b, conductance } of edges) {
		const [i, j] = [index.get(a), index.get(b)];
		if (i !== undefined) diagonal[i]! += conductance;
		if (j !== undefined) diagonal[j]! += conductance;
		if (i !== undefined && j !== undefined) inner.push([i, j, conductance]);
		else if (i !== undefined) right[i]! += conductance * (held.get(b) ?? 0);
		else if (j !== undefined) right[j]! += conductance * (held.get(a) ?? 0);
	}
	const x = solve(diagonal, inner, right);
	return new Map(names.map((name) => [name, held.get(name) ?? x[index.get(name)!]!]));
}

function solve(
	diagonal: Float64Array,
	inner: readonly (readonly [number, number, number])[],
	right: Float64Array,
): Float64Array {
	const n = diagonal.length;
	const x = new Float64Array(n);
	const r = right.slice();
	const z = r.map((v, i) => v / diagonal[i]!);
	const p = z.slice();
	const ap = new Float64Array(n);
	let rz = dot(r, z);
	const enough = TOLERANCE * TOLERANCE * rz;
	for (let step = 0; step < n && rz > enough; step++) {
		for (let i = 0; i < n; i++) ap[i] = diagonal[i]! * p[i]!;
		for (const [i, j, g] of inner) {
			ap[i]! -= g * p[j]!;
			ap[j]! -= g * p[i]!;
		}
		const alpha = rz / dot(p, ap);
		for (let i = 0; i < n; i++) {
			x[i]! += alpha * p[i]!;
			r[i]! -= alpha * ap[i]!;
			z[i] = r[i]! / diagonal[i]!;
		}
		const next = dot(r, z);
		for (let i = 0; i < n; i++) p[i] = z[i]! + (next / rz) * p[i]!;
		rz = next;
	}
	return x;
}

function dot(a: Float64Array, b: Float64Array): number {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
}
