export { type NetworkPattern, networkPattern, type SymmetricPattern } from "./pattern.js";
export {
	type FactorResult,
	factor,
	type NotPositiveDefinite,
	type Numeric,
	refactor,
} from "./symmetric/factor.js";
export { type SelectedInverse, selectedInverse } from "./symmetric/selected-inverse.js";
export { solve } from "./symmetric/solve.js";
export { solveSparse, solveSparseAt } from "./symmetric/solve-sparse.js";
export { analyse, type Ordering, type Symbolic } from "./symmetric/symbolic.js";
