/** Every feed must cross a fuse before it reaches what it feeds. */
import type { Circuit } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { feedPasses, pinOf, supplyPosts, takingPins } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { namesAlong, type Reach, reach } from "./support/ways.js";
import { contactText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

/** From this cross-section on a cable between battery, starter and generator runs without a fuse. */
export const HEAVY_MM2 = 10;

const id = "unfused-feed";

interface Unfused {
	readonly pin: Contact;
	readonly path: readonly string[];
}

/**
 * From the plus posts of battery and generator over wires, joints and the contacts of switches and relays,
 * open or closed, to each pin that takes current. The heavy starter cable is exempt, and so are signal inputs.
 */
export const unfusedFeed: Rule = {
	id,
	title: "Every feed crosses a fuse",
	source: `a fuse in every feed but the starter and generator cables of ${HEAVY_MM2} mm2 and more: common practice, no source`,
	check(circuit) {
		const posts = supplyPosts(circuit);
		const ways = posts.map((post) => reach(circuit, [pinOf(circuit, post)], feedPasses(circuit, false)));
		const byWire = new Map<string, Unfused[]>();
		for (const pin of takingPins(circuit)) {
			const path = unfusedPath(circuit, posts, ways, pin);
			if (path === undefined) continue;
			const wires = path.flatMap((name) => circuit.loom.wires.get(name) ?? []);
			if (pin.role === "30" && wires.every((wire) => wire.mm2 >= HEAVY_MM2)) continue;
			const first = (wires.find((wire) => wire.mm2 < HEAVY_MM2) ?? wires[0])?.id ?? "";
			byWire.set(first, [...(byWire.get(first) ?? []), { pin, path }]);
		}
		return [...byWire].map(([wire, found]) => report(circuit, wire, found));
	},
};

function unfusedPath(
	circuit: Circuit,
	posts: readonly Contact[],
	ways: readonly Reach[],
	pin: Contact,
): readonly string[] | undefined {
	const node = pinOf(circuit, pin);
	const at = ways.findIndex((way) => way.has(node));
	return at < 0 ? undefined : [posts[at]!.part, ...namesAlong(circuit, ways[at]!.wayTo(node)), pin.part];
}

function report(circuit: Circuit, wire: string, found: readonly Unfused[]): Finding {
	const { loom } = circuit;
	const [first] = found;
	const pins = list(found.map(({ pin }) => contactText(loom, pin.id)));
	const start = first!.path
		.slice(0, first!.path.indexOf(wire))
		.findLast((name) => loom.contacts.has(name) || loom.joints.has(name));
	return finding(circuit, id, "stop", {
		where: `${wire === "" ? "The feed" : wireText(loom, wire)}, to ${pins}`,
		why: `No fuse lies between ${first!.path[0]} and ${pins}. If this wire chafes through to the body, it burns.`,
		mend: `Put a fuse into it close to ${start ? contactText(loom, start) : first!.path[0]}, no larger than its thinnest wire allows; or take the feed from a fused place.`,
		path: first!.path,
	});
}
