/**
 * x with (L(g) + diag(s)) x = b in exact rational arithmetic: every double is a whole number times a power of two, so
 * Gaussian elimination over fractions of big integers has no rounding. The judge of ill-conditioned networks.
 */
import type { TestNetwork } from "./random-network.test-helper.js";

interface Fraction {
	readonly p: bigint;
	readonly q: bigint;
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));
const make = (p: bigint, q: bigint): Fraction => {
	const d = gcd(p, q) * (q < 0n ? -1n : 1n);
	return { p: p / d, q: q / d };
};
const minus = (a: Fraction, b: Fraction) => make(a.p * b.q - b.p * a.q, a.q * b.q);
const times = (a: Fraction, b: Fraction) => make(a.p * b.p, a.q * b.q);
const over = (a: Fraction, b: Fraction) => make(a.p * b.q, a.q * b.p);

/** A finite double, exactly. */
export function exactly(v: number): Fraction {
	let exponent = 0;
	let mantissa = v;
	while (!Number.isInteger(mantissa)) {
		mantissa *= 2;
		exponent++;
	}
	return make(BigInt(mantissa), 1n << BigInt(exponent));
}

/** Nearest double or so: 60 bits are kept before the division. */
function toNumber({ p, q }: Fraction): number {
	if (p === 0n) return 0;
	const shift = BigInt(q.toString(2).length - p.toString(2).replace("-", "").length + 64);
	const scaled = shift >= 0n ? (p << shift) / q : p / (q << -shift);
	return Number(scaled) * 2 ** Number(-shift);
}

/** The network's potentials, from its conductances (not from the assembled, already rounded, matrix). */
export function exactSolve(net: TestNetwork, b: Float64Array): Float64Array {
	const { n } = net;
	const zero = exactly(0);
	const a = Array.from({ length: n }, (_, i) => [...new Array<Fraction>(n).fill(zero), exactly(b[i])]);
	for (let e = 0; e < net.from.length; e++) {
		const u = net.from[e];
		const v = net.to[e];
		const g = exactly(net.siemens[e]);
		for (const i of [u, v]) if (i >= 0) a[i][i] = minus(a[i][i], make(-g.p, g.q));
		if (u >= 0 && v >= 0) {
			a[u][v] = minus(a[u][v], g);
			a[v][u] = minus(a[v][u], g);
		}
	}
	for (let k = 0; k < n; k++) {
		for (let i = k + 1; i < n; i++) {
			if (a[i][k].p === 0n) continue;
			const f = over(a[i][k], a[k][k]);
			for (let j = k; j <= n; j++) if (a[k][j].p !== 0n) a[i][j] = minus(a[i][j], times(f, a[k][j]));
		}
	}
	const x: Fraction[] = [];
	for (let i = n - 1; i >= 0; i--) {
		let v = a[i][n];
		for (let j = i + 1; j < n; j++) v = minus(v, times(a[i][j], x[j]));
		x[i] = over(v, a[i][i]);
	}
	return Float64Array.from(x, toNumber);
}
