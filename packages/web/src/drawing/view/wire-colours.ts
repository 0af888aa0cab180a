/** How a wire's colours are drawn: the base colour all along, each further colour as stripes across it. */
import { colourHex } from "@loomwright/engine";

export interface Stroke {
	readonly hex: string;
	/** SVG dash pattern; undefined: all along. */
	readonly dash: string | undefined;
	readonly shift: number;
}

const PERIOD = 22;
const STRIPE = 8;

/** @param colours IEC 60757 codes, base colour first; none: a neutral grey */
export function strokesOf(colours: readonly string[]): Stroke[] {
	const [base = "", ...others] = colours;
	const step = PERIOD / Math.max(1, others.length);
	const length = Math.min(STRIPE, step * 0.6);
	return [
		{ hex: colourHex(base), dash: undefined, shift: 0 },
		...others.map((code, k) => ({
			hex: colourHex(code),
			dash: `${length} ${PERIOD - length}`,
			shift: -(k * step),
		})),
	];
}
