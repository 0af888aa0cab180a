/** Finding faults from codes, functions and readings. */
export { type Effects, EffectsError, effectsFromBytes, effectsToBytes } from "./effects/index.js";
export { explainFault, Finder, finderOf, findFaults } from "./find.js";
export { EvidenceError, evidenceSchema, parseEvidence } from "./parse-evidence.js";
export type * from "./types.js";
