/** A number line that holds a band: its ends and its round ticks. */

export interface NumberLine {
	readonly from: number;
	readonly to: number;
	readonly ticks: readonly number[];
	/** Decimals the ticks need. */
	readonly decimals: number;
}

/** Round steps: 1, 2 or 5 times a power of ten, so that about `wanted` fit. */
export function roundStep(span: number, wanted: number): number {
	const rough = span / wanted;
	const power = 10 ** Math.floor(Math.log10(rough));
	return ([1, 2, 5, 10].find((m) => m * power >= rough * 0.999) ?? 10) * power;
}

/** @param values low, high and any marks; must not be empty */
export function numberLine(values: readonly number[], wanted = 6): NumberLine {
	const low = Math.min(...values);
	const high = Math.max(...values);
	const span = high - low || Math.max(Math.abs(high) * 0.1, 1e-3);
	const step = roundStep(span * 1.6, wanted);
	const from = Math.floor((low - span * 0.3) / step) * step;
	const first = low >= 0 ? Math.max(0, from) : from;
	const to = Math.ceil((high + span * 0.3) / step) * step;
	const count = Math.round((to - first) / step);
	const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
	return { from: first, to, decimals, ticks: Array.from({ length: count + 1 }, (_, k) => first + k * step) };
}
