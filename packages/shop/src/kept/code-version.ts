/** What the engine's answers were computed by: the hash of its code, so that none outlives a change of it. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ENGINE_CODE } from "../places.js";

let known: string | undefined;

/** Read once; some 20 milliseconds. */
export function codeVersion(): string {
	known ??= hashOf(ENGINE_CODE);
	return known;
}

const isCode = (name: string): boolean =>
	/\.[jt]s$/.test(name) && !/\.(test|test-helper|d)\.[jt]s$/.test(name);

function hashOf(folders: readonly string[]): string {
	const hash = createHash("sha256");
	for (const folder of folders)
		for (const name of (readdirSync(folder, { recursive: true }) as string[]).filter(isCode).sort())
			hash
				.update(`${name}\n`)
				.update(readFileSync(join(folder, name)))
				.update("\n");
	return hash.digest("hex");
}
