/** A change of the network: what a fault, a pulled fuse or a moved wire does to its branches. */

/** A branch that becomes something else. Where it is given siemens, its device no longer switches it. */
export type BranchChange =
	| {
			readonly branch: number;
			/** 0: open. */
			readonly siemens: number;
			/** Default: the branch's own. */
			readonly emf?: number;
	  }
	| {
			readonly branch: number;
			/** Ohms added in series with whatever the branch is; an open branch stays open. */
			readonly seriesOhms: number;
	  };

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

/** Siemens and source volts of a branch after its change, from what they were. */
export function changed(
	change: BranchChange,
	siemens: number,
	emf: number,
): { siemens: number; emf: number } {
	if ("seriesOhms" in change) return { siemens: siemens / (1 + siemens * change.seriesOhms), emf };
	return { siemens: change.siemens, emf: change.emf ?? emf };
}
