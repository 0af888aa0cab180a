/**
 * Loom segments: wire, crimps, contacts and splice ends in series between two devices or branchings.
 *
 * An opening or added ohms anywhere in one does the same to everything outside it, and control units and functions
 * look only at the devices' own pins. So their numbers are found once per segment, not once per crimp.
 */
import type { Change, Circuit } from "../circuit/index.js";

/**
 * Gives the change that stands for changes of the same segments; others stand for themselves.
 * @param watched nodes that are looked at themselves: branches that meet there are segments of their own
 */
export function segmentChanges(circuit: Circuit, watched: ReadonlySet<number>): (change: Change) => Change {
	const representative = representatives(circuit, watched);
	const known = new Map<string, Change>();
	return (change) => {
		if (change.added.length > 0) return change;
		/** Ohms added to each segment; Infinity for an opening. */
		const ohms = new Map<number, number>();
		for (const one of change.branches) {
			const opens = "siemens" in one;
			if (opens && (one.siemens !== 0 || one.emf !== undefined)) return change;
			const segment = representative[one.branch]!;
			ohms.set(segment, (ohms.get(segment) ?? 0) + (opens ? Number.POSITIVE_INFINITY : one.seriesOhms));
		}
		const list = [...ohms].sort((x, y) => x[0] - y[0]);
		const key = list.map(([branch, added]) => `${branch}+${added}`).join(" ");
		let standing = known.get(key);
		if (standing === undefined) {
			const branches = list.map(([branch, added]) =>
				added === Number.POSITIVE_INFINITY ? { branch, siemens: 0 } : { branch, seriesOhms: added },
			);
			standing = { branches, added: [] };
			known.set(key, standing);
		}
		return standing;
	};
}

/** For each branch, the first branch of its segment. */
function representatives(circuit: Circuit, watched: ReadonlySet<number>): Int32Array {
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
	at.forEach((around, node) => {
		if (around.length !== 2 || watched.has(node)) return;
		const [one, two] = around as [number, number];
		if ([one, two].some((k) => branches[k]!.owner.what === "device")) return;
		const x = root(one);
		const y = root(two);
		parent[Math.max(x, y)] = Math.min(x, y);
	});
	return parent.map((_, k) => root(k));
}
