/** Which sizes a change moves. */
import type { Circuit } from "../circuit/index.js";
import {
	type FuseSize,
	type LoadSize,
	type SpliceSize,
	sizeCircuits,
	type WireSize,
} from "../sizing/index.js";

/** One of them as it was and as it is; undefined where it is not there. */
export interface SizeChange<T> {
	readonly id: string;
	readonly before: T | undefined;
	readonly after: T | undefined;
}

export interface SizeChanges {
	readonly wires: readonly SizeChange<WireSize>[];
	readonly fuses: readonly SizeChange<FuseSize>[];
	readonly loads: readonly SizeChange<LoadSize>[];
	readonly splices: readonly SizeChange<SpliceSize>[];
}

/** A current counts as moved from this share and these amperes, a temperature from these kelvin, a loss from these volts. */
const SHARE = 0.01;
const LEAST_AMPS = 0.005;
const LEAST_KELVIN = 0.5;
const LEAST_VOLTS = 0.005;

export function changedSizes(before: Circuit, after: Circuit): SizeChanges {
	const [was, is] = [sizeCircuits(before), sizeCircuits(after)];
	const loadId = ({ part, element }: LoadSize) =>
		element.includes(".") || element === "" ? element || part : `${part} ${element}`;
	return {
		wires: differing(was.wires, is.wires, (wire) => wire.wire, wireDiffers),
		fuses: differing(was.fuses, is.fuses, (fuse) => fuse.fuse, fuseDiffers),
		loads: differing(was.loads, is.loads, loadId, loadDiffers),
		splices: differing(was.splices, is.splices, (splice) => splice.splice, different),
	};
}

function differing<T>(
	was: readonly T[],
	is: readonly T[],
	idOf: (one: T) => string,
	differs: (x: T, y: T) => boolean,
): SizeChange<T>[] {
	const now = new Map(is.map((one) => [idOf(one), one]));
	const known = new Set(was.map(idOf));
	const changed = was.flatMap((before): SizeChange<T>[] => {
		const id = idOf(before);
		const after = now.get(id);
		return after === undefined || differs(before, after) ? [{ id, before, after }] : [];
	});
	const added = is.filter((one) => !known.has(idOf(one)));
	return [...changed, ...added.map((after) => ({ id: idOf(after), before: undefined, after }))];
}

const far = (x: number, y: number, share: number, least: number) =>
	x !== y && !(Math.abs(x - y) <= Math.max(least, share * Math.abs(x)));
const different = (x: unknown, y: unknown) => JSON.stringify(x) !== JSON.stringify(y);

function wireDiffers(x: WireSize, y: WireSize): boolean {
	return (
		far(x.brief.amps, y.brief.amps, SHARE, LEAST_AMPS) ||
		far(x.celsius, y.celsius, 0, LEAST_KELVIN) ||
		far(x.volts, y.volts, SHARE, LEAST_VOLTS) ||
		different(
			[x.mm2, x.metres, x.fuse, x.needed, x.ends, x.suffices],
			[y.mm2, y.metres, y.fuse, y.needed, y.ends, y.suffices],
		)
	);
}

function fuseDiffers(x: FuseSize, y: FuseSize): boolean {
	return (
		far(x.steady.amps, y.steady.amps, SHARE, LEAST_AMPS) ||
		different([x.amps, x.thinnest, x.largestAmps, x.faults], [y.amps, y.thinnest, y.largestAmps, y.faults])
	);
}

function loadDiffers(x: LoadSize, y: LoadSize): boolean {
	return (
		far(x.feedVolts, y.feedVolts, SHARE, LEAST_VOLTS) ||
		far(x.groundVolts, y.groundVolts, SHARE, LEAST_VOLTS) ||
		x.suffices !== y.suffices
	);
}
