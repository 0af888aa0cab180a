/**
 * What the faults of a car do, kept in a folder by the hash of its tables: the first search of a car known before does
 * not wait for it. A file that is missing, damaged or of another version is as if it were not there: it is found anew.
 */
import {
	closeSync,
	fsyncSync,
	mkdirSync,
	openSync,
	readFileSync,
	renameSync,
	rmSync,
	writeSync,
} from "node:fs";
import { join } from "node:path";
import {
	type Effects,
	EffectsError,
	effectsFromBytes,
	effectsToBytes,
	type Finder,
} from "@loomwright/engine";

const fileOf = (folder: string, key: string): string => join(folder, `${key}.effects`);

/** Kept effects under a key, or undefined where there are none that can be used. */
export function readEffects(folder: string, key: string): Effects | undefined {
	try {
		return effectsFromBytes(readFileSync(fileOf(folder, key)));
	} catch (error) {
		if (error instanceof EffectsError || (error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
		throw error;
	}
}

/** Writes beside and puts in place whole, so that no reader meets half a file. */
export function writeEffects(folder: string, effects: Effects): void {
	mkdirSync(folder, { recursive: true });
	const file = fileOf(folder, effects.key);
	const beside = `${file}.${process.pid}.new`;
	const open = openSync(beside, "w");
	try {
		writeSync(open, effectsToBytes(effects));
		fsyncSync(open);
	} finally {
		closeSync(open);
	}
	try {
		renameSync(beside, file);
	} catch (error) {
		rmSync(beside, { force: true });
		throw error;
	}
}

/** Gives a finder what is kept of its car; else finds it (seconds) and keeps it. Says which. */
export function keepEffects(finder: Finder, folder: string): "kept" | "found" {
	const kept = readEffects(folder, finder.key);
	if (kept && finder.use(kept)) return "kept";
	const effects = finder.effects();
	writeEffects(folder, effects);
	finder.use(effects);
	return "found";
}
