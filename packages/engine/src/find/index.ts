/** Finding faults from codes, functions and readings. */
export { Finder, findFaults, type Findable } from "./find.js";
export { EvidenceError, evidenceSchema, parseEvidence } from "./parse-evidence.js";
export { readingText } from "./items.js";
export type * from "./types.js";
