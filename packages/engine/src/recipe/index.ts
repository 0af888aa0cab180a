/** Recipe: applying them, and the differences of two looms. */
export { type Applied, type ApplyOptions, applyRecipe } from "./apply.js";
export type { Change, ChangeKind } from "./compare/change.js";
export { compareLooms } from "./compare/compare.js";
export type { Joined, Reach } from "./compare/joined.js";
export { naturalOrder } from "./compare/natural.js";
export { doneOtherwise } from "./done-otherwise.js";
export { loomAs, type Stage } from "./loom-as.js";
export type { Misfit } from "./misfit.js";
export type { Need, StepDefinition, StepKind } from "./step-definition.js";
export { NOTHING_TOUCHED, type Side, type Touched } from "./touched.js";
