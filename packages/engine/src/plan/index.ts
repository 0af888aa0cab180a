/** Choosing how each wanted circuit is made: least work, material and risk as one integer program. */
export { Costs, DEFAULT_COSTS } from "./costs.js";
export { Places } from "./places.js";
export { Pricer, priceRecipe } from "./price.js";
export { MODES, type Mode, type Program, type ProgramRow, type Solved, type Solver } from "./program.js";
export { type Alternative, type Choice, type Proposal, propose } from "./propose.js";
export { readPlanTables } from "./read-plan-tables.js";
export type { CircuitClass, PlanTables, Price, WantedCircuit, Way } from "./types.js";
export { WAYS } from "./types.js";
export type { Check } from "./verify.js";
