import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { BadInput } from "@loomwright/shop";

/**
 * Writes tables into a folder, making it where it is missing.
 * @throws BadInput when that cannot be done
 */
export function writeFiles(folder: string, files: Readonly<Record<string, string>>): void {
	try {
		mkdirSync(folder, { recursive: true });
		for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
	} catch (error) {
		throw new BadInput(
			`the recipe cannot be written: ${(error as Error).message}`,
			"a folder that can be written to",
			folder,
		);
	}
}
