/** A fuse must blow before the thinnest wire behind it is harmed. */
import type { Circuit } from "../circuit/index.js";
import type { Part, Wire } from "../loom/index.js";
import { deadSides } from "./support/dead-sides.js";
import { feedPasses } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { largestFuse, wireForFuse } from "./support/fuse-for-wire.js";
import { namesAlong, type Reach, reach } from "./support/ways.js";
import { amount, partText, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "fuse-too-large";

/** Behind a fuse lies all that it feeds over the loom and switch and relay contacts, up to the next fuse or the load. */
export const fuseTooLarge: Rule = {
	id,
	title: "No fuse is too large for the thinnest wire behind it",
	source: "reference/electrical/fuse-for-wire.csv",
	check(circuit) {
		// A fuse fed from both sides has no side behind it: that is the finding of another rule.
		return [...deadSides(circuit)].flatMap(([fuse, dead]) => {
			const ways = reach(circuit, [dead], feedPasses(circuit, false));
			return checkFuse(circuit, circuit.loom.parts.get(fuse)!, ways) ?? [];
		});
	},
};

function checkFuse(circuit: Circuit, fuse: Part, ways: Reach): Finding | undefined {
	const amps = fuse.values.amps ?? 0;
	let thinnest: { wire: Wire; node: number } | undefined;
	for (const node of ways.nodes) {
		const owner = circuit.branches[ways.by(node)]?.owner;
		const wire = owner?.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
		if (wire && (thinnest === undefined || wire.mm2 < thinnest.wire.mm2)) thinnest = { wire, node };
	}
	if (thinnest === undefined) return undefined;
	const { wire, node } = thinnest;
	const most = largestFuse(wire.mm2);
	if (amps <= most) return undefined;
	const size = wireForFuse(amps);
	return finding(circuit, id, "stop", {
		where: `${partText(circuit.loom, fuse.id)}, ${amount(amps, "A")}: ${wireText(circuit.loom, wire.id)} behind it`,
		why: `${wire.mm2} mm2 may be fused with ${amount(most, "A")} at most. A short behind it heats the wire before the fuse blows.`,
		mend: `Fit a fuse of ${amount(most, "A")} if the loads allow it${size === undefined ? "" : `, or a wire of at least ${size} mm2`}.`,
		path: [fuse.id, ...namesAlong(circuit, ways.wayTo(node))],
	});
}
