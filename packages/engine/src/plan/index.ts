/** Choosing how each wanted circuit is made: least work, material and risk as one integer program. */
export { type ByHand, priceByHand } from "./by-hand.js";
export { DEFAULT_COSTS } from "./costs.js";
export { MODES, type Mode, type Program, type ProgramRow, type Solved, type Solver } from "./program.js";
export { proposalFiles } from "./proposal-files.js";
export { type Alternative, type Choice, type Proposal, propose } from "./propose.js";
export { PLAN_TABLES, readPlanTables } from "./read-plan-tables.js";
export { draftFiles } from "./travel/draft-files.js";
export { REASONS } from "./travel/reasons.js";
export { type Journey, type Travelled, travel, VERDICTS } from "./travel/travel.js";
export { type PlanTables, type Price, WAYS, type Way } from "./types.js";
export type { Check } from "./verify.js";
