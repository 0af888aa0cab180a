/** Which table a file is, by its name or its header. */
import { readTable } from "@loomwright/engine";

/** Tables by their name, each with columns that only it has together. */
const MARKS: Readonly<Record<string, readonly string[]>> = {
	recipe: ["step", "kind"],
	targets: ["target"],
	costs: ["item", "price"],
	places: ["place", "near"],
	wires: ["wire", "from", "to"],
	contacts: ["contact", "role"],
	parts: ["part", "kind"],
	joints: ["joint", "kind"],
	conditions: ["condition", "subject"],
	monitors: ["code", "unit"],
	functions: ["function", "when"],
	"new-parts": [],
	"new-contacts": [],
	"new-joints": [],
};

export const TABLE_NAMES: readonly string[] = Object.keys(MARKS);

/** Empty where nothing tells. */
export function guessTable(file: string, text: string): string {
	const stem = file.toLowerCase().replace(/\.\w+$/, "");
	if (TABLE_NAMES.includes(stem)) return stem;
	const columns = readTable(file, text, []).columns.map((column) => column.trim().toLowerCase());
	const fits = TABLE_NAMES.filter((name) => {
		const marks = MARKS[name] ?? [];
		return marks.length > 0 && marks[0] === columns[0] && marks.every((mark) => columns.includes(mark));
	});
	return fits.length === 1 ? (fits[0] ?? "") : "";
}
