/** Assembling, solving and changing the network. */
export { Batch, type Evaluated, Kept, type Path } from "./batch.js";
export type { AddedBranch, BranchChange, Change } from "./changes.js";
export { type Branch, Circuit, type Difference, REFERENCE, type Standing, type Topology } from "./circuit.js";
export { Condensed, nodesNeeded } from "./condense.js";
export type { Control } from "./controls.js";
export { CircuitError } from "./error.js";
export { type Heated, type HeatOptions, heatWires, operateWarm } from "./heating.js";
export { pinNode, wireEndNode } from "./names.js";
export {
	type Operating,
	operate,
	type SolveOptions,
	separated,
	voltsAt,
} from "./operating.js";
export {
	branchAmps,
	type CurrentProbe,
	currentBetween,
	type PairProbe,
	type Probe,
	probeValue,
} from "./probes.js";
export { resistanceMatrix } from "./resistance.js";
export { conditionOf, settingsOf } from "./settings.js";
export { Shelf } from "./shelf.js";
export { TRUSTED_PIVOT } from "./small.js";
