import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";

/** Rows of a published table kept in reference/electrical, by column. */
export function reference(name: string): readonly Readonly<Record<string, string>>[] {
	const url = new URL(`../../../../reference/electrical/${name}.csv`, import.meta.url);
	return parse(readFileSync(url), { columns: true });
}
