/**
 * Sparse linear algebra for networks: analyse once, factor often, solve many.
 *
 * Primary: analyse, factor, refactor, solve. Everything below works on what those return.
 */

// dense: tiny systems, and the slow engine to check against
export { denseReference, type Engine, type Prepared } from "./dense/reference.js";
export { type SmallDense, smallDense } from "./dense/small.js";
// general systems, where a controlled source breaks the symmetry
export { factorGeneral, type GeneralNumeric, type GeneralResult } from "./general/factor.js";
export { solveGeneral, solveGeneralChecked, solveTransposed } from "./general/solve.js";
export { analyseGeneral, type GeneralSymbolic } from "./general/symbolic.js";
// primary: symmetric positive definite systems
export { type NetworkPattern, networkPattern, type SymmetricPattern } from "./pattern.js";
export { RESIDUAL_TOLERANCE } from "./residual.js";
// secondary: other right-hand sides, inverse entries, small changes, verified answers
export { ConductorOhms } from "./symmetric/conductor-ohms.js";
export {
	type FactorResult,
	factor,
	type Numeric,
	refactor,
	release,
	smallestPivot,
} from "./symmetric/factor.js";
export { inverseAmong } from "./symmetric/inverse-among.js";
export { type KeptForward, Patch, withAncestors } from "./symmetric/patch.js";
export { refactorPart } from "./symmetric/refactor-part.js";
export { type SelectedInverse, selectedInverse } from "./symmetric/selected-inverse.js";
export { solve } from "./symmetric/solve.js";
export { type CheckedSolution, solveChecked } from "./symmetric/solve-checked.js";
export { denseInverse, inverseColumns, type SparseColumns, solveMany } from "./symmetric/solve-many.js";
export { solveSparse, solveSparseAt } from "./symmetric/solve-sparse.js";
export { analyse, type Symbolic } from "./symmetric/symbolic.js";
export {
	edgeColumns,
	type LowRankUpdate,
	lowRankUpdate,
	solveUpdated,
} from "./update/low-rank.js";
