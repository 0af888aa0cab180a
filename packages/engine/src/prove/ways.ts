/**
 * The ways in which a fault shows itself that a sheet must catch.
 *
 * A poor connection counts with the chosen least ohms: more ohms move every reading further (Rayleigh's monotonicity
 * law; P. G. Doyle, J. L. Snell, 'Random Walks and Electric Networks', 1984, ch. 1.4). A connector not locked or a
 * relay not seated counts once for each contact, open alone.
 */
import type { BranchChange, Change, Circuit } from "../circuit/index.js";
import type { Fault } from "../faults/index.js";

export interface Way {
	/** Number of its fault. */
	readonly fault: number;
	/** The contact that is open, where the fault has several. Empty otherwise. */
	readonly at: string;
	readonly change: Change;
}

/** @param leastOhms added resistance of a poor connection */
export function waysOf(circuit: Circuit, faults: readonly Fault[], leastOhms: number): Way[] {
	return faults.flatMap((fault, number) =>
		changesOf(fault, leastOhms).map((change, _k, all): Way => {
			const [first] = change.branches;
			const at = all.length > 1 && first ? circuit.branches[first.branch]!.owner.id : "";
			return { fault: number, at, change };
		}),
	);
}

function changesOf({ patterns }: Fault, leastOhms: number): Change[] {
	const [only] = patterns;
	if (patterns.length === 1) return [only!.change];
	const single = patterns.map((p) => p.change).filter((c) => c.branches.length === 1 && c.added.length === 0);
	const open = new Map(single.filter((c) => !poor(c.branches[0]!)).map((c) => [c.branches[0]!.branch, c]));
	if (open.size > 0) return [...open.values()];
	const [branch] = single.map((c) => c.branches[0]!.branch);
	return branch === undefined ? [] : [{ branches: [{ branch, seriesOhms: leastOhms }], added: [] }];
}

const poor = (change: BranchChange): boolean => "seriesOhms" in change;
