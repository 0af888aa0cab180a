/** No fuse may blow, or age, in normal use. */
import { branchAmps, type Circuit } from "../circuit/index.js";
import type { Part } from "../loom/index.js";
import { isFuse } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { downstream } from "./support/flow.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { namesAlong } from "./support/ways.js";
import { amount, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "fuse-overloaded";

/** Share of its rating that a fuse carries for ever: reference/electrical/fuse-wire-rules.csv R5 (from memory). */
export const LASTING_SHARE = 0.75;

/** The steady current through each fuse in every listed condition in which the car stands whole. */
export const fuseOverloaded: Rule = {
	id,
	title: "No fuse carries more than it stands",
	source: "rating, and 75 % of it for long: reference/electrical/fuse-wire-rules.csv R5",
	check(circuit) {
		const worst = new Map<number, { at: Settled; amps: number }>();
		for (const at of wholeConditions(circuit))
			circuit.branches.forEach((_, branch) => {
				if (!isFuse(circuit, branch)) return;
				const amps = Math.abs(branchAmps(at.point, branch));
				if (amps > (worst.get(branch)?.amps ?? 0)) worst.set(branch, { at, amps });
			});
		return [...worst].flatMap(([branch, { at, amps }]) => {
			const fuse = circuit.loom.parts.get(circuit.branches[branch]!.owner.id)!;
			const rating = fuse.values.amps ?? 0;
			return amps > LASTING_SHARE * rating ? [report(circuit, fuse, branch, at, amps, rating)] : [];
		});
	},
};

function report(
	circuit: Circuit,
	fuse: Part,
	branch: number,
	{ point, condition }: Settled,
	amps: number,
	rating: number,
): Finding {
	const blows = amps > rating;
	const { a, b } = circuit.branches[branch]!;
	const way = downstream(point, branchAmps(point, branch) > 0 ? b : a).branches;
	return finding(circuit, id, blows ? "stop" : "note", {
		where: `${partText(circuit.loom, fuse.id)}, ${amount(rating, "A")}`,
		why: blows
			? `It carries ${amount(amps, "A")} in '${condition}' and blows.`
			: `It carries ${amount(amps, "A")} in '${condition}', more than ${LASTING_SHARE * 100} % of its rating: it ages where that lasts.`,
		mend: blows
			? "Look on the way shown for a short or a load that does not belong there; then size fuse and wire anew."
			: "Take load off it, or size fuse and wire anew.",
		path: [fuse.id, ...namesAlong(circuit, way)],
	});
}
