/** What a change does: to readings, to what the rules say, to sizes. */
import type { Circuit } from "../circuit/index.js";
import { type Finding, runRules } from "../rules/index.js";
import { changedReadings, type ReadingChange } from "./readings.js";
import { changedSizes, type SizeChanges } from "./sizes.js";

export type { ReadingChange } from "./readings.js";
export type { SizeChange, SizeChanges } from "./sizes.js";

export interface Effects {
	readonly readings: readonly ReadingChange[];
	readonly findings: {
		/** Said now and not before, the gravest first. */
		readonly come: readonly Finding[];
		readonly gone: readonly Finding[];
	};
	readonly sizes: SizeChanges;
}

/**
 * The loom after a change against the loom before it, in every listed condition in which the car stands whole.
 * @param delivered the loom as delivered, for the rules that compare; undefined where these are it
 */
export function effectsOf(
	before: Circuit,
	after: Circuit,
	delivered?: { readonly before: Circuit; readonly after: Circuit },
): Effects {
	const was = findingsOf(before, delivered?.before);
	const is = runRules(after, delivered?.after);
	const keys = (findings: readonly Finding[]) => new Set(findings.map(keyOf));
	const [old, now] = [keys(was), keys(is)];
	return {
		readings: changedReadings(before, after),
		findings: {
			come: is.filter((finding) => !old.has(keyOf(finding))),
			gone: was.filter((finding) => !now.has(keyOf(finding))),
		},
		sizes: changedSizes(before, after),
	};
}

const cache = new WeakMap<
	Circuit,
	{ readonly delivered: Circuit | undefined; readonly findings: Finding[] }
>();

/** Of the loom before the change, found once: change after change is held against it. */
function findingsOf(circuit: Circuit, delivered: Circuit | undefined): Finding[] {
	const known = cache.get(circuit);
	if (known && known.delivered === delivered) return known.findings;
	const findings = runRules(circuit, delivered);
	cache.set(circuit, { delivered, findings });
	return findings;
}

const keyOf = ({ rule, severity, where }: Finding) => `${rule}|${severity}|${where}`;
