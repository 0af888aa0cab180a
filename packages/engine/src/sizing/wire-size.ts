/** One wire: what it carries, how warm it gets, what it loses, and the smallest size that would do. */
import { type Circuit, wireEndNode } from "../circuit/index.js";
import type { Wire } from "../loom/index.js";
import { wireForFuse } from "../rules/support/fuse-for-wire.js";
import { LASTING_CELSIUS, steadyCelsius } from "../rules/support/heat.js";
import { wireOhms } from "../units/index.js";
import { awgMm2 } from "../units/size.js";
import { type Currents, NO_CURRENTS, type Peak } from "./currents.js";
import { type EndSize, sizeEnd } from "./end-size.js";
import type { FuseSize } from "./fuse-size.js";
import { awgText, GAUGES, METRIC_MM2 } from "./sizes.js";

/** Smallest wire for handling in mm2: terminal-practice.csv 026 (common practice, no source). */
export const LEAST_MM2 = 0.35;

export interface Needed {
	readonly mm2: number;
	/** Smallest even gauge that would do as well. */
	readonly awg: string;
	/** What asks for it. */
	readonly because: "heat" | "fuse" | "handling";
}

export interface WireSize {
	readonly wire: string;
	readonly circuit: string;
	readonly bundle: string;
	readonly mm2: number;
	readonly awg: string;
	readonly metres: number;
	readonly steady: Peak;
	/** While the starter turns. */
	readonly brief: Peak;
	/** Its lamps switched on cold. */
	readonly rush: Peak;
	/** Its motors started. */
	readonly start: Peak;
	/** Lost in the warm conductor at the lasting current. */
	readonly volts: number;
	/** Loaded wires in its bundle, itself included. */
	readonly loaded: number;
	/** Infinity: it burns. */
	readonly celsius: number;
	readonly limitCelsius: number;
	/** The fuse before it; empty: none, or it is on the ground side. */
	readonly fuse: string;
	/** Undefined above the sizes there are. */
	readonly needed: Needed | undefined;
	readonly ends: readonly EndSize[];
	readonly suffices: boolean;
}

export interface WireContext {
	readonly circuit: Circuit;
	readonly currents: ReadonlyMap<number, Currents>;
	readonly loaded: ReadonlyMap<string, number>;
	readonly fuses: readonly FuseSize[];
}

export function sizeWire(context: WireContext, wire: Wire): WireSize {
	const { circuit, currents, fuses } = context;
	const start = circuit.node(wireEndNode(wire.id, "from"));
	const conductor = circuit.branchesOf
		.get(wire.id)
		?.find(
			(branch) => circuit.branches[branch]!.owner.what === "wire" && circuit.branches[branch]!.a === start,
		);
	const carried = currents.get(conductor ?? -1) ?? NO_CURRENTS;
	const loaded = wire.bundle === "" ? 1 : Math.max(1, context.loaded.get(wire.bundle) ?? 1);
	const { amps } = carried.steady;
	const celsius = steadyCelsius(wire.mm2, amps, loaded);
	const fuse = fuses.find((one) => one.wires.includes(wire.id));
	const needed = neededSize(amps, loaded, fuse?.amps ?? 0);
	const warm = Math.min(celsius, LASTING_CELSIUS);
	return {
		...{ wire: wire.id, circuit: wire.circuit, bundle: wire.bundle },
		...{ mm2: wire.mm2, awg: awgText(wire.mm2), metres: wire.metres },
		...carried,
		volts: amps * wireOhms({ mm2: wire.mm2, metres: wire.metres, celsius: warm }).ohms,
		...{ loaded, celsius, limitCelsius: LASTING_CELSIUS, fuse: fuse?.fuse ?? "", needed },
		ends: [wire.from, wire.to].flatMap((end) => sizeEnd(circuit, wire, end, amps) ?? []),
		suffices: needed !== undefined && wire.mm2 >= 0.98 * needed.mm2,
	};
}

/**
 * The smallest size on the shelf that stays cool enough, that the fuse protects, and that can be handled.
 * @param amps lasting @param loaded wires loaded in its bundle @param fuse amperes of the fuse before it; 0: none
 */
export function neededSize(amps: number, loaded: number, fuse: number): Needed | undefined {
	const cool = (mm2: number) => steadyCelsius(mm2, amps, loaded) <= LASTING_CELSIUS;
	const byHeat = METRIC_MM2.find(cool);
	const byFuse = fuse > 0 ? wireForFuse(fuse) : 0;
	if (byHeat === undefined || byFuse === undefined) return undefined;
	const mm2 = Math.max(byHeat, byFuse, LEAST_MM2);
	// A gauge may lie a little under the metric size it stands for.
	const gauge = GAUGES.find((n) => awgMm2(n) >= 0.98 * Math.max(byFuse, LEAST_MM2) && cool(awgMm2(n)));
	if (gauge === undefined) return undefined;
	const because =
		mm2 === byFuse && byFuse >= byHeat ? "fuse" : mm2 === byHeat && byHeat > LEAST_MM2 ? "heat" : "handling";
	return { mm2, awg: awgText(awgMm2(gauge)), because };
}
