/** A car's trouble codes per unit, as the tables list them. */
import type { Loom } from "@loomwright/engine";

export interface UnitCodes {
	readonly unit: string;
	readonly label: string;
	/** Each code once, with its title. */
	readonly codes: readonly { readonly code: string; readonly title: string }[];
}

export function unitCodes(loom: Loom): UnitCodes[] {
	const units = new Map<string, Map<string, string>>();
	for (const { unit, code, title } of loom.monitors) {
		const codes = units.get(unit) ?? new Map<string, string>();
		codes.set(code, codes.get(code) || title);
		units.set(unit, codes);
	}
	return [...units].map(([unit, codes]) => ({
		unit,
		label: loom.parts.get(unit)?.label ?? "",
		codes: [...codes].map(([code, title]) => ({ code, title })),
	}));
}

/** Units that have a code with every word of the text, with those codes alone. */
export function searchCodes(units: readonly UnitCodes[], text: string): UnitCodes[] {
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	return units.flatMap(({ unit, label, codes }) => {
		const found = codes.filter(({ code, title }) => {
			const all = `${unit} ${label} ${code} ${title}`.toLowerCase();
			return words.every((word) => all.includes(word));
		});
		return found.length > 0 ? [{ unit, label, codes: found }] : [];
	});
}
