/** A fuse against what it carries and against the thinnest wire behind it. */
import type { Circuit } from "../circuit/index.js";
import type { Part, Wire } from "../loom/index.js";
import { LASTING_SHARE } from "../rules/fuse-overloaded.js";
import { deadSides } from "../rules/support/dead-sides.js";
import { feedPasses, isFuse } from "../rules/support/feeds.js";
import { largestFuse } from "../rules/support/fuse-for-wire.js";
import { AIR_CELSIUS } from "../rules/support/heat.js";
import { reach } from "../rules/support/ways.js";
import { type Currents, NO_CURRENTS, type Peak } from "./currents.js";
import { gatesOf, holdsFor } from "./fuse-gates.js";
import { celsiusAfter } from "./transient.js";

/** Insulation limits by how long: insulation-limits.csv 004, 003, 002 (from memory). */
const LIMITS: readonly { readonly upTo: number; readonly celsius: number; readonly source: string }[] = [
	{ upTo: 5, celsius: 160, source: "reference/electrical/insulation-limits.csv 004" },
	{ upTo: 21600, celsius: 150, source: "reference/electrical/insulation-limits.csv 003" },
	{ upTo: 864000, celsius: 125, source: "reference/electrical/insulation-limits.csv 002" },
];

/** Seconds that the rush of cold lamps, and the start of motors, last: common practice, no source. */
export const RUSH_SECONDS = 0.02;
export const START_SECONDS = 0.1;

/** The thinnest wire when the fuse carries a gate's current for as long as it may. */
export interface AtGate {
	/** Current as a share of the rating. */
	readonly share: number;
	readonly amps: number;
	readonly seconds: number;
	readonly celsius: number;
	readonly limitCelsius: number;
	/** Rows of the gate and of the limit. */
	readonly sources: readonly string[];
}

export interface FuseSize {
	readonly fuse: string;
	readonly amps: number;
	readonly steady: Peak;
	/** Share of its rating that it carries for long. */
	readonly share: number;
	readonly rush: Peak;
	readonly start: Peak;
	/** Seconds for which it holds the rush of its lamps, and the start of its motors; undefined: for ever. */
	readonly holdsRush: number | undefined;
	readonly holdsStart: number | undefined;
	/** Wires behind it, up to the next fuse or the load. */
	readonly wires: readonly string[];
	/** The thinnest of them, and the largest fuse for it (reference/electrical/fuse-for-wire.csv). */
	readonly thinnest: string;
	readonly largestAmps: number | undefined;
	/** Where the thinnest wire comes nearest to its limit. */
	readonly worst: AtGate | undefined;
	/** What is wrong with it, in words; empty: it does. */
	readonly faults: readonly string[];
}

/** Every fuse that feeds one way. A fuse fed from both sides has no side behind it: a rule tells of it. */
export function sizeFuses(circuit: Circuit, currents: ReadonlyMap<number, Currents>): FuseSize[] {
	return [...deadSides(circuit)].map(([id, dead]) => {
		const fuse = circuit.loom.parts.get(id)!;
		const ways = reach(circuit, [dead], feedPasses(circuit, false));
		const wires = ways.nodes.flatMap((node) => wireOf(circuit, ways.by(node)) ?? []);
		return sizeFuse(circuit, fuse, [...new Set(wires)], currents);
	});
}

function wireOf(circuit: Circuit, branch: number): Wire | undefined {
	const owner = circuit.branches[branch]?.owner;
	return owner?.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
}

function sizeFuse(
	circuit: Circuit,
	fuse: Part,
	wires: readonly Wire[],
	currents: ReadonlyMap<number, Currents>,
): FuseSize {
	const amps = fuse.values.amps ?? 0;
	const element = (circuit.branchesOf.get(fuse.id) ?? []).find((branch) => isFuse(circuit, branch));
	const { steady, rush, start } = currents.get(element ?? -1) ?? NO_CURRENTS;
	const thinnest = wires.reduce<Wire | undefined>(
		(least, wire) => (least && least.mm2 <= wire.mm2 ? least : wire),
		undefined,
	);
	const worst = thinnest && worstGate(amps, thinnest.mm2);
	const largestAmps = thinnest && largestFuse(thinnest.mm2);
	const [holdsRush, holdsStart] = [holdsFor(amps, rush.amps), holdsFor(amps, start.amps)];
	const faults = [
		steady.amps > amps ? "carries more than its rating" : "",
		steady.amps <= amps && steady.amps > LASTING_SHARE * amps
			? "carries more than 75 % of its rating for long"
			: "",
		(holdsRush ?? 1) < RUSH_SECONDS ? "may open when its lamps are switched on" : "",
		(holdsStart ?? 1) < START_SECONDS ? "may open when its motors start" : "",
		largestAmps !== undefined && amps > largestAmps ? "is larger than its thinnest wire allows" : "",
		worst && worst.celsius > worst.limitCelsius ? "lets its thinnest wire get too hot before it opens" : "",
	].filter(Boolean);
	return {
		...{ fuse: fuse.id, amps, steady, share: amps > 0 ? steady.amps / amps : 0 },
		...{ rush, start, holdsRush, holdsStart },
		...{ wires: wires.map((wire) => wire.id), thinnest: thinnest?.id ?? "", largestAmps, worst, faults },
	};
}

/** Between two rows on a line of the time's logarithm; up to 5 s the first. */
function limitFor(seconds: number): { celsius: number; source: string } {
	const at = LIMITS.findIndex(({ upTo }) => seconds <= upTo);
	const [to, from] = [LIMITS[at]!, LIMITS[Math.max(0, at - 1)]!];
	if (from === to) return to;
	const way = Math.log(seconds / from.upTo) / Math.log(to.upTo / from.upTo);
	return { celsius: from.celsius + way * (to.celsius - from.celsius), source: to.source };
}

/** The gate at which a wire comes nearest to what it stands for so long, or goes furthest over it. */
export function worstGate(rating: number, mm2: number): AtGate | undefined {
	let worst: AtGate | undefined;
	const over = (one: AtGate) => (one.celsius - AIR_CELSIUS) / (one.limitCelsius - AIR_CELSIUS);
	for (const { share, least, most, source } of gatesOf(rating)) {
		const seconds = most ?? least;
		const limit = limitFor(seconds);
		const amps = share * rating;
		const celsius = celsiusAfter(mm2, amps, seconds, AIR_CELSIUS);
		const one: AtGate = {
			...{ share, amps, seconds, celsius, limitCelsius: limit.celsius },
			sources: [source, limit.source],
		};
		if (worst === undefined || over(one) > over(worst)) worst = one;
	}
	return worst;
}
