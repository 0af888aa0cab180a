import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";

/**
 * Every file under a path (the path itself when it is a file), in a fixed order. Missing paths give none.
 *
 * @param {string} path
 * @returns {string[]}
 */
export function filesUnder(path) {
	if (!existsSync(path)) return [];
	if (statSync(path).isFile()) return [path];
	return readdirSync(path, { withFileTypes: true })
		.sort((a, b) => (a.name < b.name ? -1 : 1))
		.flatMap((entry) => {
			const inner = join(path, entry.name);
			return entry.isDirectory() ? filesUnder(inner) : entry.isFile() ? [inner] : [];
		});
}

/**
 * A hash over the names and contents of files, the same on every machine and after any checkout.
 *
 * @param {string} root names are taken relative to it
 * @param {string[]} paths files and folders
 * @param {(name: string) => boolean} [wanted]
 */
export function fingerprint(root, paths, wanted = () => true) {
	const hash = createHash("sha256");
	for (const file of paths.flatMap((path) => filesUnder(join(root, path)))) {
		const name = relative(root, file).replaceAll("\\", "/");
		if (wanted(name)) hash.update(`${name}\0`).update(readFileSync(file)).update("\0");
	}
	return hash.digest("hex");
}

/**
 * @param {string} file
 * @returns {string} what the stamp says, empty when there is none
 */
export function readStamp(file) {
	return existsSync(file) ? readFileSync(file, "utf8").trim() : "";
}

/**
 * @param {string} file
 * @param {string} text
 */
export function writeStamp(file, text) {
	mkdirSync(dirname(file), { recursive: true });
	writeFileSync(file, `${text}\n`);
}
