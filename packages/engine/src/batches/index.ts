/** All readings of many changes in many conditions, on one thread or spread over several. */
export type { BatchCondition, BatchJob, Failure, Piece, Range } from "./job.js";
export type { BatchPort } from "./port.js";
export { serveBatches } from "./serve.js";
export { BatchError, spreadBatches } from "./spread.js";
export { type WorkOptions, workBatches } from "./work.js";
