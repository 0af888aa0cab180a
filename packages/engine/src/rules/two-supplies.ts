/** Two supplies must not be joined. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Part } from "../loom/index.js";
import { deadSides } from "./support/dead-sides.js";
import { feedPasses, pinOf, supplyPosts } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere, netAt } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "two-supplies";

/**
 * A regulated supply of a unit on one conductor with another one; or reached from battery or generator over the loom,
 * fuses and contacts; or a fuse that is fed from both sides over other fuses. A main fuse between battery and
 * generator is fed from both sides on purpose.
 */
export const twoSupplies: Rule = {
	id,
	title: "No two supplies are joined",
	source: "each circuit hangs on one supply: common practice, no source",
	check(circuit) {
		return [...joinedRegulators(circuit), ...liveRegulators(circuit), ...twiceFed(circuit)];
	},
};

function regulators({ loom }: Circuit): Contact[] {
	return [...loom.contacts.values()].filter(
		(pin) => pin.role === "sensor supply" && loom.parts.get(pin.part)?.kind === "control unit",
	);
}

function joinedRegulators(circuit: Circuit): Finding[] {
	const byNet = new Map<number, Contact[]>();
	for (const pin of regulators(circuit)) {
		const net = netAt(circuit, pin.id);
		byNet.set(net, [...(byNet.get(net) ?? []), pin]);
	}
	return [...byNet.values()].flatMap((pins) => {
		if (pins.length < 2) return [];
		const [first, second] = pins as [Contact, Contact];
		const ways = reach(circuit, [pinOf(circuit, first)], (k) => isLoom(circuit, k) && isThere(circuit, k));
		return finding(circuit, id, "warn", {
			where: list(pins.map((pin) => contactText(circuit.loom, pin.id))),
			why: "These sensor supplies are one conductor. Each pushes against the other, and a short on one takes both away.",
			mend: "Part them, so that each sensor hangs on one supply of its own unit.",
			path: [first.id, ...namesAlong(circuit, ways.wayTo(pinOf(circuit, second))), second.id],
		});
	});
}

function liveRegulators(circuit: Circuit): Finding[] {
	const posts = supplyPosts(circuit).map((post) => pinOf(circuit, post));
	const ways = reach(circuit, posts, feedPasses(circuit, true));
	return regulators(circuit)
		.filter((pin) => ways.has(pinOf(circuit, pin)))
		.map((pin) =>
			finding(circuit, id, "stop", {
				where: contactText(circuit.loom, pin.id),
				why: "The battery's feed reaches this sensor supply. It puts 12 V on sensors made for 5 V and on the unit's own regulator.",
				mend: "Part the two on the way shown before the battery is joined.",
				path: [...namesAlong(circuit, ways.wayTo(pinOf(circuit, pin))), pin.id],
			}),
		);
}

function twiceFed(circuit: Circuit): Finding[] {
	const posts = supplyPosts(circuit).map((post) => pinOf(circuit, post));
	const direct = reach(circuit, posts, feedPasses(circuit, false));
	const sound = deadSides(circuit);
	const found = [...circuit.loom.parts.values()].flatMap((fuse) => {
		if (fuse.kind !== "fuse" || sound.has(fuse.id)) return [];
		const sides = contactsOfPart(circuit.loom, fuse.id);
		if (sides.length < 2 || sides.every((pin) => direct.has(pinOf(circuit, pin)))) return [];
		const passes = feedPasses(circuit, true);
		const ways = reach(
			circuit,
			posts,
			(branch, to) => circuit.branches[branch]!.owner.id !== fuse.id && passes(branch, to),
		);
		const fed = sides.filter((pin) => ways.has(pinOf(circuit, pin)));
		if (fed.length < 2) return [];
		// The side that the other fuse feeds has the longer way.
		const way = fed
			.map((pin) => ways.wayTo(pinOf(circuit, pin)))
			.reduce((longest, next) => (next.length > longest.length ? next : longest));
		return [{ fuse, way: namesAlong(circuit, way) }];
	});
	return groupByWay(found).map((group) => report(circuit, group));
}

interface Twice {
	readonly fuse: Part;
	readonly way: readonly string[];
}

/** Fuses fed through each other have one cause. */
function groupByWay(found: readonly Twice[]): Twice[][] {
	const groups: Twice[][] = [];
	for (const one of found) {
		const group = groups.find((all) =>
			all.some(({ fuse, way }) => way.includes(one.fuse.id) || one.way.includes(fuse.id)),
		);
		if (group) group.push(one);
		else groups.push([one]);
	}
	return groups;
}

function report(circuit: Circuit, group: readonly Twice[]): Finding {
	const [{ way }] = group as [Twice];
	return finding(circuit, id, "warn", {
		where: list(group.map(({ fuse }) => partText(circuit.loom, fuse.id))),
		why: "It is fed from both sides: the circuits of two fuses are joined. Pulling one does not make its circuit dead, and a short is fed through both.",
		mend: "Part the two circuits on the way shown.",
		path: way,
	});
}
