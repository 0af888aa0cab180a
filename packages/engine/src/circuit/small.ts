/** Solves a small dense system M Y = R by elimination with partial pivoting. */

/**
 * Smallest pivot, relative to the largest entry of its row as given, that is still trusted. Below it the
 * capacitance matrix of a low-rank update has cancelled to nothing and the update must be refactored.
 */
export const TRUSTED_PIVOT = 3e-8;

/**
 * @param m k x k by rows, overwritten
 * @param r k x columns by rows, overwritten by Y
 * @param trusted smallest pivot that will do
 * @returns r, or undefined where a pivot is too small to be trusted
 */
export function solveSmall(
	m: Float64Array,
	r: Float64Array,
	k: number,
	columns = 1,
	trusted = TRUSTED_PIVOT,
): Float64Array | undefined {
	const scale = new Float64Array(k);
	for (let i = 0; i < k; i++) {
		let most = 0;
		for (let j = 0; j < k; j++) most = Math.max(most, Math.abs(m[i * k + j]!));
		// A row of the identity plus something: 1 is the size that cancellation is measured against.
		scale[i] = Math.max(most, 1);
	}
	for (let p = 0; p < k; p++) {
		let best = p;
		for (let i = p + 1; i < k; i++)
			if (Math.abs(m[i * k + p]!) / scale[i]! > Math.abs(m[best * k + p]!) / scale[best]!) best = i;
		if (!(Math.abs(m[best * k + p]!) / scale[best]! > trusted)) return undefined;
		if (best !== p) {
			exchange(m, k, p, best);
			exchange(r, columns, p, best);
			exchange(scale, 1, p, best);
		}
		const pivot = m[p * k + p]!;
		for (let i = p + 1; i < k; i++) {
			const f = m[i * k + p]! / pivot;
			if (f === 0) continue;
			for (let j = p; j < k; j++) m[i * k + j]! -= f * m[p * k + j]!;
			for (let q = 0; q < columns; q++) r[i * columns + q]! -= f * r[p * columns + q]!;
		}
	}
	for (let i = k - 1; i >= 0; i--)
		for (let q = 0; q < columns; q++) {
			let sum = r[i * columns + q]!;
			for (let j = i + 1; j < k; j++) sum -= m[i * k + j]! * r[j * columns + q]!;
			r[i * columns + q] = sum / m[i * k + i]!;
		}
	return r;
}

function exchange(rows: Float64Array, width: number, one: number, two: number): void {
	for (let j = 0; j < width; j++) {
		const held = rows[one * width + j]!;
		rows[one * width + j] = rows[two * width + j]!;
		rows[two * width + j] = held;
	}
}
