/**
 * The car's wiring as a network that computes.
 *
 * Primary: open a car, ask of it. Secondary: the network itself. Everything else is internal.
 */

export {
	type BatchCondition,
	BatchError,
	type BatchJob,
	type BatchPort,
	type Failure as BatchFailure,
	type Piece as BatchPiece,
	serveBatches,
	spreadBatches,
	type WorkOptions,
	workBatches,
} from "./batches/index.js";
export { type Car, openCar, type Which } from "./car.js";
export {
	Batch,
	type Change as NetworkChange,
	Circuit,
	CircuitError,
	type Heated,
	type HeatOptions,
	heatWires,
	Kept,
	type Operating,
	operate,
	operateWarm,
	type Probe,
	probeValue,
	resistanceMatrix,
	settingsOf,
} from "./circuit/index.js";
export { deviceKinds, inrushAmps } from "./devices/index.js";
export {
	type Fault,
	faultSet,
	type KindRate,
	type PersonRate,
	type Repair,
	type ShopRates,
	type ShopRecord,
} from "./faults/index.js";
export {
	type Contradiction,
	type Effects,
	EffectsError,
	type Evidence,
	EvidenceError,
	type Explanation,
	effectsFromBytes,
	effectsToBytes,
	evidenceSchema,
	explainFault,
	Finder,
	type Found,
	finderOf,
	findFaults,
	type GroundLine,
	type NextAction,
	type NextStep,
	type Occasion,
	type Outcome,
	parseEvidence,
	type RankedFault,
	type SingleFault,
	type TakenReading,
} from "./find/index.js";
export type * from "./loom/index.js";
export {
	DEFAULT_COSTS,
	draftFiles,
	MODES as PLAN_MODES,
	PLAN_TABLES,
	type PlanTables,
	type Price as PlanPrice,
	type Program,
	type Proposal,
	priceByHand,
	proposalFiles,
	propose,
	REASONS as TRANSFER_REASONS,
	readPlanTables,
	type Solved,
	type Solver,
	travel,
	VERDICTS as TRANSFER_VERDICTS,
	WAYS as PLAN_WAYS,
} from "./plan/index.js";
export {
	type Coverage,
	judge,
	type Miss,
	type ProveSheet,
	powerUp,
	proveSheet,
	type ReadEvidence,
	type SheetEntry,
	type SheetOptions,
	type SheetPart,
	type SheetRow,
	type Stage,
	type StageReading,
	toEvidence,
	type Verdict,
} from "./prove/index.js";
export {
	conditionWords,
	forbidden,
	ownerText,
	type Question,
	type Reading,
	ReadingError,
	takeReading,
	type What,
	WORKSHOP_METER,
} from "./readings/index.js";
export { type Change, compareLooms, type Misfit, naturalOrder } from "./recipe/index.js";
export {
	type Covering,
	type Finding,
	type Grounded,
	groundsOf,
	matchAcceptances,
	type Rule,
	rules,
	runRules,
	type Severity,
} from "./rules/index.js";
export {
	type EndSize,
	type FuseSize,
	type LoadSize,
	type Peak,
	SIZE_SOURCES,
	type SpliceSize,
	sizeCircuits,
	type WireSize,
} from "./sizing/index.js";
export {
	formatTableError,
	openTable,
	type RowChange,
	readTable,
	rowChanges,
	type TableError,
	TableErrors,
	writeTable,
} from "./tables/index.js";
export { colourHex, colourWords, formatColours, INSULATION_CELSIUS } from "./units/index.js";
export { type Supposed, supposedFiles, type WhatIf, whatIf } from "./what-if.js";
