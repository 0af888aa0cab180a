/**
 * What the faults of a car do to its codes and functions, kept by the hash of what it was found from: the first
 * search of a car known before does not wait for it.
 */
import {
	type Effects,
	EffectsError,
	effectsFromBytes,
	effectsToBytes,
	type Finder,
} from "@loomwright/engine";
import { codeVersion } from "./code-version.js";
import type { KeptFolder } from "./folder.js";

const names = new WeakMap<Finder, string>();

/** Worked out once for a finder: hashing a car's faults takes a tenth of a second. */
function nameOf(finder: Finder): string {
	const name = names.get(finder) ?? `effects-${finder.key}-${codeVersion().slice(0, 16)}`;
	names.set(finder, name);
	return name;
}

/** Finders that have been given theirs. */
const given = new WeakSet<Finder>();

/** Gives a finder what is kept of its car. Says whether it has it, now or from before. */
export function useKept(finder: Finder, kept: KeptFolder): boolean {
	if (given.has(finder)) return true;
	const bytes = kept.read(nameOf(finder));
	const effects = bytes && readEffects(bytes);
	if (effects === undefined || !finder.use(effects)) return false;
	given.add(finder);
	return true;
}

/** Finds what the faults of a car do (seconds), unless it is kept, and keeps it. */
export function keepEffects(finder: Finder, kept: KeptFolder): "kept" | "found" {
	if (useKept(finder, kept)) return "kept";
	kept.write(nameOf(finder), effectsToBytes(finder.effects()));
	return "found";
}

function readEffects(bytes: Uint8Array): Effects | undefined {
	try {
		return effectsFromBytes(bytes);
	} catch (error) {
		if (error instanceof EffectsError) return undefined;
		throw error;
	}
}
