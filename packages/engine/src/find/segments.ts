/**
 * Loom segments: wire, crimps, contacts and splice ends in series between two devices or branchings.
 *
 * An opening or added ohms anywhere in one does the same to everything outside it, and control units and functions
 * look only at the devices' own pins. So their numbers are found once per segment, not once per crimp.
 */
import type { Change, Circuit } from "../circuit/index.js";

/** Gives the change that stands for a change of any one branch of its segment; others stand for themselves. */
export function segmentChanges(circuit: Circuit): (change: Change) => Change {
	const representative = representatives(circuit);
	const known = new Map<string, Change>();
	return (change) => {
		const [only, ...more] = change.branches;
		if (only === undefined || more.length > 0 || change.added.length > 0) return change;
		const opens = "siemens" in only;
		if (opens && (only.siemens !== 0 || only.emf !== undefined)) return change;
		const branch = representative[only.branch]!;
		const key = opens ? `${branch}` : `${branch}+${only.seriesOhms}`;
		let standing = known.get(key);
		if (standing === undefined) {
			standing = { branches: [{ ...only, branch }], added: [] };
			known.set(key, standing);
		}
		return standing;
	};
}

/** For each branch, the first branch of its segment. */
function representatives(circuit: Circuit): Int32Array {
	const { branches, nodes } = circuit;
	const parent = Int32Array.from(branches, (_, k) => k);
	const root = (k: number): number => {
		let at = k;
		while (parent[at] !== at) {
			parent[at] = parent[parent[at]!]!;
			at = parent[at]!;
		}
		return at;
	};
	const at: number[][] = nodes.map(() => []);
	branches.forEach(({ a, b }, k) => {
		if (a >= 0) at[a]!.push(k);
		if (b >= 0) at[b]!.push(k);
	});
	for (const around of at) {
		if (around.length !== 2) continue;
		const [one, two] = around as [number, number];
		if ([one, two].some((k) => branches[k]!.owner.what === "device")) continue;
		const x = root(one);
		const y = root(two);
		parent[Math.max(x, y)] = Math.min(x, y);
	}
	return parent.map((_, k) => root(k));
}
