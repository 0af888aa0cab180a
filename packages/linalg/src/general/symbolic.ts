/**
 * Column order of the general path: approximate minimum degree on the graph of A^T + A, for P R A Q = L U with pivots
 * kept on the diagonal where that is safe (as in T. A. Davis, E. Palamadai Natarajan, "Algorithm 907: KLU", ACM
 * Trans. Math. Softw. 37 (2010) 36). We do without the block triangular form: networks are irreducible or nearly so.
 */
import { adjacency } from "../ordering/adjacency.js";
import { fillReducingOrder } from "../ordering/order.js";
import { checkPattern } from "../pattern.js";

/** What depends on the pattern of a general square matrix only. */
export interface GeneralSymbolic {
	readonly n: number;
	readonly colPtr: Int32Array;
	readonly rowIdx: Int32Array;
	/** order[k] is the original column factored k-th. */
	readonly order: Int32Array;
}

/**
 * Orders the columns of a general matrix.
 *
 * @param colPtr, rowIdx pattern by columns, all entries; repeated entries add
 */
export function analyseGeneral(n: number, colPtr: Int32Array, rowIdx: Int32Array): GeneralSymbolic {
	checkPattern(n, colPtr, rowIdx);
	return { n, colPtr, rowIdx, order: fillReducingOrder(n, adjacency(n, colPtr, rowIdx)) };
}
