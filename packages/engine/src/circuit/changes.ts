/** A change of the network: what a fault, a pulled fuse or a moved wire does to its branches. */

/** A branch that becomes something else. It is then no longer switched by its device. */
export interface BranchChange {
	readonly branch: number;
	readonly siemens: number;
	/** Default: the branch's own. */
	readonly emf?: number;
}

/** A new conductor between two points (node numbers). */
export interface AddedBranch {
	readonly a: number;
	readonly b: number;
	readonly siemens: number;
}

export interface Change {
	readonly branches: readonly BranchChange[];
	readonly added: readonly AddedBranch[];
}

export const NO_CHANGE: Change = { branches: [], added: [] };
