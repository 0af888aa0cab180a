/** Which side of each fuse goes dead when it is pulled. */
import type { Circuit } from "../../circuit/index.js";
import { contactsOfPart } from "../../loom/index.js";
import { pinOf, regionOf, supplyPosts } from "./feeds.js";

const cache = new WeakMap<Circuit, ReadonlyMap<string, number>>();

/** Node of the dead side of each fuse that has one: fed on the other side, over contacts open or closed. */
export function deadSides(circuit: Circuit): ReadonlyMap<string, number> {
	let found = cache.get(circuit);
	if (found === undefined) {
		found = findDeadSides(circuit);
		cache.set(circuit, found);
	}
	return found;
}

function findDeadSides(circuit: Circuit): Map<string, number> {
	const fuses = [...circuit.loom.parts.values()].filter((part) => part.kind === "fuse");
	const sides = fuses.map((fuse) => contactsOfPart(circuit.loom, fuse.id).map((pin) => pinOf(circuit, pin)));
	const links = sides.map((nodes) => nodes.map((node) => regionOf(circuit, node)));
	const posts = supplyPosts(circuit).map((post) => regionOf(circuit, pinOf(circuit, post)));
	const found = new Map<string, number>();
	fuses.forEach((fuse, k) => {
		const fed = fedWithout(posts, links, k);
		const dead = sides[k]!.filter((_, side) => !fed.has(links[k]![side]!));
		if (dead.length === 1) found.set(fuse.id, dead[0]!);
	});
	return found;
}

/**
 * Regions that the supplies reach when one fuse is pulled.
 * @param posts regions of the plus posts
 * @param links regions at the sides of each fuse
 */
function fedWithout(
	posts: readonly number[],
	links: readonly (readonly number[])[],
	pulled: number,
): ReadonlySet<number> {
	const fed = new Set(posts);
	for (let before = -1; before !== fed.size; ) {
		before = fed.size;
		links.forEach((sides, k) => {
			if (k !== pulled && sides.some((side) => fed.has(side))) for (const side of sides) fed.add(side);
		});
	}
	return fed;
}
