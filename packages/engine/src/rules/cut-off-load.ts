/** A load must have a way to a supply on one side and a way to ground on the other. */
import type { Circuit } from "../circuit/index.js";
import { contactsOfPart, wiresAtContact } from "../loom/index.js";
import { deviceKind, feedPasses, isFuse, passesOn, pinOf, supplyPosts } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { type Load, loadsOf } from "./support/loads.js";
import { groundNets, isLoom, isThere, netOf } from "./support/nets.js";
import { across, branchesAt, namesAlong, type Reach, reach } from "./support/ways.js";
import { partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "cut-off-load";

/** Unit pins that can give or take a load's current. */
const GIVES: ReadonlySet<string> = new Set(["high-side", "bridge", "sensor supply"]);
const TAKES: ReadonlySet<string> = new Set(["low-side", "bridge"]);

/**
 * Over the loom, fuses, series resistors and the contacts of switches and relays, open or closed, so that no
 * condition needs to switch the load on. A control unit's outputs count as supply or ground; what the further pins
 * of a module do is not known, so they count as both. A pin without a wire is another rule's.
 */
export const cutOffLoad: Rule = {
	id,
	title: "Every load has a way to a supply and a way to ground",
	source: "a closed circuit",
	check(circuit) {
		const ends = endsByNode(circuit);
		const known: Known = new Map();
		return loadsOf(circuit)
			.filter((load) => load.part.kind !== "control unit" && isWired(circuit, load))
			.flatMap((load) => checkLoad(circuit, load, ends, known) ?? []);
	},
};

interface Ends {
	readonly gives: ReadonlySet<number>;
	readonly takes: ReadonlySet<number>;
}

function endsByNode(circuit: Circuit): Ends {
	const gives = new Set(supplyPosts(circuit).map((post) => pinOf(circuit, post)));
	const takes = new Set<number>();
	for (const contact of circuit.loom.contacts.values()) {
		const kind = circuit.loom.parts.get(contact.part)?.kind;
		const unknown = kind === "module" && contact.role !== "supply" && contact.role !== "ground";
		if (unknown || (kind === "control unit" && GIVES.has(contact.role))) gives.add(pinOf(circuit, contact));
		if (unknown || (kind === "control unit" && TAKES.has(contact.role))) takes.add(pinOf(circuit, contact));
	}
	return { gives, takes };
}

/** Are both nodes of the load wired? */
function isWired(circuit: Circuit, load: Load): boolean {
	const { a, b } = circuit.branches[load.branch]!;
	return [a, b].every((node) => {
		const contact = contactsOfPart(circuit.loom, load.part.id).find((pin) => pinOf(circuit, pin) === node);
		return contact !== undefined && wiresAtContact(circuit.loom, contact.id).length > 0;
	});
}

interface Side {
	readonly fed: boolean;
	readonly grounded: boolean;
}

/** Sides already known, by node: all nodes of one walk see the same. */
type Known = Map<number, Side>;

function walk(circuit: Circuit, start: number): Reach {
	const grounds = groundNets(circuit);
	const passes = feedPasses(circuit, true);
	return reach(circuit, [start], (branch, to) =>
		deviceKind(circuit, branch) === "resistor"
			? to >= 0 && !grounds.has(netOf(circuit, to))
			: passes(branch, to),
	);
}

function sideOf(circuit: Circuit, start: number, ends: Ends, known: Known): Side {
	const grounds = groundNets(circuit);
	const onGround = (node: number) => node < 0 || grounds.has(netOf(circuit, node));
	if (onGround(start)) return { fed: false, grounded: true };
	const seen = known.get(start);
	if (seen) return seen;
	const { nodes } = walk(circuit, start);
	const closes = (branch: number) =>
		isLoom(circuit, branch) ? isThere(circuit, branch) : passesOn(circuit, branch) || isFuse(circuit, branch);
	const side = {
		fed: nodes.some((node) => ends.gives.has(node)),
		grounded: nodes.some(
			(node) =>
				ends.takes.has(node) ||
				branchesAt(circuit, node).some((branch) => closes(branch) && onGround(across(circuit, branch, node))),
		),
	};
	for (const node of nodes) known.set(node, side);
	return side;
}

/** The longest way from a pin, for the drawing. */
function wayFrom(circuit: Circuit, node: number): string[] {
	const ways = walk(circuit, node);
	return namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!));
}

function checkLoad(circuit: Circuit, load: Load, ends: Ends, known: Known): Finding | undefined {
	const { a, b } = circuit.branches[load.branch]!;
	const first = sideOf(circuit, a, ends, known);
	const second = sideOf(circuit, b, ends, known);
	if ((first.fed && second.grounded) || (second.fed && first.grounded)) return undefined;
	const fed = first.fed || second.fed;
	const grounded = first.grounded || second.grounded;
	const lacks = fed
		? "has no way to ground"
		: grounded
			? "has no way to a supply"
			: "has neither a supply nor a ground";
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, load.part.id)}${load.element === "" ? "" : `, ${load.element}`}`,
		why: `It ${lacks}, whatever is switched on. It can never work.`,
		mend: fed
			? "Find where its ground lead ends, and run it on."
			: "Find where its feed ends, and run it on from a fuse or driver.",
		path: [...wayFrom(circuit, a).toReversed(), load.part.id, ...wayFrom(circuit, b)],
	});
}
