/**
 * Which reading catches which change.
 *
 * A reading of a sound car lies within its value +- (2 deviations + the meter's limit): the band of takeReading, and
 * the row's pass limits. Under a change the same loom scatters about another value. The change counts as caught
 * where the two bands do not overlap: the value under the change, less or more 2 deviations and the meter's limit
 * there, still lies outside the pass limits. Its deviation there is the sound reading's, grown with the value where
 * the current takes another way; ohms added to the same way scatter no more than before. How well that stands for
 * the deviation worked out anew for each fault is measured by the bench topic `prove`.
 *
 * 'Open' is a value of its own: from LEAST_OPEN on a reading counts as open, and a change of an open reading is
 * caught where it brings it down to what a meter reads well.
 */
import { componentOf } from "../circuit/components.js";
import type { Change, Condensed } from "../circuit/index.js";
import { meterError, WORKSHOP_METER } from "../readings/index.js";
import { DeadNet, type Pair } from "./dead-net.js";
import type { Candidate } from "./types.js";

/** From so many ohms on a reading counts as open: beyond, damp and fingers are read. Common practice, no source. */
export const LEAST_OPEN = 2e6;
/** Most ohms of a reading that is neither open nor doubtful. */
const MOST_OHMS = 2e5;

/** No change of fewer ohms can be told: the meter's floor lies in both bands. */
const LEAST_STEP = 2 * WORKSHOP_METER.floor.ohms;
/** Up to so many readings of a condition it pays to ask first whether a change can move any. */
const FEW = 100;

/** What a candidate reads on a sound car. */
export interface SoundReading {
	/** Ohms; NaN: open. */
	readonly value: number;
	readonly deviation: number;
	/** Pass limits; for an open reading LEAST_OPEN and infinity. */
	readonly low: number;
	readonly high: number;
}

export interface Detection {
	/** Of each candidate; undefined where it makes no row: too many ohms to be read well, or through what is spared. */
	readonly sound: readonly (SoundReading | undefined)[];
	/** For each change the numbers of the candidates that catch it, ascending. */
	readonly caughtBy: readonly (readonly number[])[];
	/** 1 for each change that alters the dead network in some offered condition at all. */
	readonly acts: Uint8Array;
}

/**
 * @param changes of the condensed network, each once
 * @param spared branches of it that the meter's current is kept out of, each with the share of it that may pass
 * Cost: per condition one solve for each candidate and for each change that works on a part with candidates.
 */
export function detect(
	net: Condensed,
	candidates: readonly Candidate[],
	changes: readonly Change[],
	spared: ReadonlyMap<number, number>,
): Detection {
	const sound = new Array<SoundReading | undefined>(candidates.length);
	const caughtBy: number[][] = changes.map(() => []);
	const acts = new Uint8Array(changes.length);
	for (const [when, numbers] of byCondition(candidates)) {
		const dead = new DeadNet(net, when);
		const pairs = new Map<number, Pair>();
		const inPart = new Map<number, number[]>();
		for (const number of numbers) {
			const { from, to } = candidates[number]!;
			const pair = { a: nodeOf(net, from), b: nodeOf(net, to) };
			const { value, deviation } = dead.sound(pair);
			const band = limits(value, deviation);
			if (!Number.isNaN(value) && (band.high > MOST_OHMS || dead.passes(pair, spared))) continue;
			sound[number] = { value, deviation, ...band };
			pairs.set(number, pair);
			for (const part of new Set([pair.a, pair.b].map((node) => componentOf(dead.components, node)))) {
				const list = inPart.get(part);
				if (list) list.push(number);
				else inPart.set(part, [number]);
			}
		}
		const deaf = numbers.length <= FEW ? dead.deaf([...pairs.values()]) : () => false;
		changes.forEach((change, c) => {
			if (acts[c] === 1 && deaf(change)) return;
			const under = dead.under(change);
			if (under === undefined) return;
			acts[c] = 1;
			const sameWay = change.added.length === 0 && change.branches.every((one) => "seriesOhms" in one);
			// A pair between two touched parts is listed in both.
			const seen = under.touched.length > 1 ? new Set<number>() : undefined;
			for (const part of under.touched)
				for (const number of inPart.get(part) ?? []) {
					if (seen?.has(number)) continue;
					seen?.add(number);
					const reading = sound[number]!;
					const ohms = under.ohms(pairs.get(number)!, reading.value);
					if (Math.abs(ohms - reading.value) < LEAST_STEP) continue;
					if (told(reading, ohms, sameWay)) caughtBy[c]!.push(number);
				}
		});
	}
	for (const list of caughtBy) list.sort((x, y) => x - y);
	return { sound, caughtBy, acts };
}

function byCondition(candidates: readonly Candidate[]): Map<string, number[]> {
	const groups = new Map<string, number[]>();
	candidates.forEach(({ when }, number) => {
		const list = groups.get(when);
		if (list) list.push(number);
		else groups.set(when, [number]);
	});
	return groups;
}

function nodeOf(net: Condensed, name: string): number {
	return name === "body" ? -1 : net.node(net.full.node(name)!);
}

/** Pass limits of a reading in ohms (NaN: open). */
export function limits(value: number, deviation: number): { low: number; high: number } {
	if (Number.isNaN(value)) return { low: LEAST_OPEN, high: Number.POSITIVE_INFINITY };
	const half = 2 * deviation + meterError(WORKSHOP_METER, "ohms", value);
	return { low: Math.max(0, value - half), high: value + half };
}

/**
 * Is a reading of `ohms` (NaN: open) under a change told from the sound one?
 * @param sameWay the change only adds ohms to the way the current takes
 */
export function told(sound: SoundReading, ohms: number, sameWay: boolean): boolean {
	const open = Number.isNaN(ohms) || ohms >= LEAST_OPEN;
	if (Number.isNaN(sound.value)) return !open && ohms < MOST_OHMS;
	if (open) return true;
	const deviation = sameWay ? sound.deviation : sound.deviation * Math.max(1, ohms / sound.value);
	const half = 2 * deviation + meterError(WORKSHOP_METER, "ohms", ohms);
	return ohms - half > sound.high || ohms + half < sound.low;
}
