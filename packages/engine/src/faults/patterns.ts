/** Ways a contact fails, shared by the kinds. */
import type { Pattern } from "./types.js";

/** Levels of added resistance in ohms: a poor joint under load, a bad one, one that only a signal gets through. */
export const POOR_OHMS = [1, 30, 1000] as const;

export function opened(branch: number): Pattern["change"] {
	return { branches: [{ branch, siemens: 0 }], added: [] };
}

/** The added-resistance patterns of one branch, equally likely. */
export function poor(branch: number): Pattern[] {
	return POOR_OHMS.map((ohms) => ({
		weight: 1 / POOR_OHMS.length,
		change: { branches: [{ branch, seriesOhms: ohms }], added: [] },
	}));
}

/** Adds another conductor between two nodes. */
export function joined(a: number, b: number, ohms: number): Pattern["change"] {
	return { branches: [], added: [{ a, b, siemens: 1 / ohms }] };
}
