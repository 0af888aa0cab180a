/** Proving the loom: before power, and while power comes on in stages. */
export { judge, type ReadEvidence, type SheetEntry, toEvidence, type Verdict } from "./judge.js";
export { powerUp, type Stage, type StageKind, type StageReading } from "./power-up/index.js";
export { proveSheet } from "./sheet.js";
export type {
	Coverage,
	Miss,
	MissReason,
	Phase,
	Provable,
	ProveSheet,
	SheetOptions,
	SheetPart,
	SheetRow,
} from "./types.js";
