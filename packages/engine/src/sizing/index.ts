/** Sizing: wires, fuses, loads, splices and their terminals, over all conditions of the car. */
import type { Circuit } from "../circuit/index.js";
import { currentsOf, loadedWires } from "./currents.js";
import { type FuseSize, sizeFuses } from "./fuse-size.js";
import { type LoadSize, sizeLoads } from "./load-size.js";
import { type SpliceSize, sizeSplices } from "./splice-size.js";
import { sizeWire, type WireSize } from "./wire-size.js";

export type { Sourced } from "./crimp.js";
export type { Peak } from "./currents.js";
export type { EndSize } from "./end-size.js";
export type { AtGate, FuseSize } from "./fuse-size.js";
export type { LoadSize } from "./load-size.js";
export type { SpliceSize } from "./splice-size.js";
export type { Needed, WireSize } from "./wire-size.js";

export interface Sizes {
	readonly wires: readonly WireSize[];
	readonly fuses: readonly FuseSize[];
	readonly loads: readonly LoadSize[];
	readonly splices: readonly SpliceSize[];
}

/** Where the figures come from, by what they are: for those that are not given with their own row. */
export const SIZE_SOURCES = {
	steady: "the network, solved in every listed condition in which the car stands whole",
	rush: "cold filament: the lamp's `cold_share`; motors reference/electrical/terminal-practice.csv 027",
	volts: "reference/electrical/conductor-iso6722-memory.csv and material-constants.csv 001, 003",
	celsius:
		"reference/electrical/ampacity-free-air.csv, bundles fuse-wire-rules.csv R8; air 40 degrees C: common practice, no source",
	limitCelsius: "reference/electrical/insulation-limits.csv 001",
	neededMm2:
		"reference/electrical/fuse-for-wire.csv, conductor-iso6722-memory.csv, terminal-practice.csv 026",
	fuseShare: "reference/electrical/fuse-wire-rules.csv R5",
	gates: "reference/electrical/fuse-gates.csv and copper-heat.csv 001",
	mostVolts:
		"reference/electrical/practice-limits.csv 001, 010, 011, 017, 020; shares from memory: packages/engine/src/rules/voltage-drop.ts",
	terminal:
		"reference/electrical/terminal-practice.csv 011 to 013; bolted parts ring: common practice, no source",
} as const satisfies Readonly<Record<string, string>>;

/** Sizes every wire, fuse, load and splice of a car. What nothing is said of carries nothing in any listed condition. */
export function sizeCircuits(circuit: Circuit): Sizes {
	const currents = currentsOf(circuit);
	const loaded = loadedWires(circuit);
	const fuses = sizeFuses(circuit, currents);
	const context = { circuit, currents, loaded, fuses };
	return {
		wires: [...circuit.loom.wires.values()].map((wire) => sizeWire(context, wire)),
		fuses,
		loads: sizeLoads(circuit),
		splices: sizeSplices(circuit),
	};
}
