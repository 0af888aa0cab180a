/** Following the current of a solved network up to its source and down to the battery's minus. */
import { branchAmps, type Circuit, type Operating, pinNode, voltsAt } from "../../circuit/index.js";
import { deviceKind } from "./feeds.js";
import { across, branchesAt } from "./ways.js";

export interface Flow {
	/** Branches in order from the start. */
	readonly branches: readonly number[];
	/** The last node. */
	readonly end: number;
	/** True when it came to a battery or generator. */
	readonly arrived: boolean;
}

const SOURCES = new Set(["battery", "generator"]);
/** Below this a current is rounding. */
const LEAST_AMPS = 1e-6;

/** Against the current, by the strongest branch into each node, up to the source's plus pin. */
export function upstream(point: Operating, node: number): Flow {
	return follow(point, node, -1);
}

/** With the current, by the strongest branch out of each node, down to the source's minus pin. */
export function downstream(point: Operating, node: number): Flow {
	return follow(point, node, 1);
}

function follow(point: Operating, start: number, sense: 1 | -1): Flow {
	const { circuit } = point;
	const branches: number[] = [];
	const seen = new Set([start]);
	for (let node = start; ; ) {
		let most = LEAST_AMPS;
		let next = -1;
		for (const branch of branchesAt(circuit, node)) {
			const away = circuit.branches[branch]!.a === node ? 1 : -1;
			const amps = sense * away * branchAmps(point, branch);
			if (amps <= most) continue;
			most = amps;
			next = branch;
		}
		if (next < 0) return { branches, end: node, arrived: false };
		if (SOURCES.has(deviceKind(circuit, next))) return { branches, end: node, arrived: true };
		const to = across(circuit, next, node);
		// Only a source inside a device can lead back to a place already passed.
		if (seen.has(to)) return { branches, end: node, arrived: false };
		seen.add(to);
		branches.push(next);
		node = to;
	}
}

/**
 * The piece of a load's way that lies on its own side of the battery's posts. While the generator charges, what leads
 * from it to the battery carries the charging current, and a drop is measured from the posts.
 */
export function fromPosts(point: Operating, side: "feed" | "ground", branches: readonly number[]): number[] {
	const { circuit, volts } = point;
	const node = postsOf(circuit)[side];
	if (node === undefined) return [...branches];
	const limit = volts[node]!;
	return branches.filter((branch) => {
		const { a, b } = circuit.branches[branch]!;
		const [x, y] = [voltsAt(volts, a), voltsAt(volts, b)];
		return side === "feed" ? Math.min(x, y) < limit : Math.max(x, y) > limit;
	});
}

type Posts = { readonly feed: number | undefined; readonly ground: number | undefined };
const posts = new WeakMap<Circuit, Posts>();

/** Nodes of the battery's posts. */
function postsOf(circuit: Circuit): Posts {
	let found = posts.get(circuit);
	if (found === undefined) {
		const post = (role: string) => {
			const { contacts, parts } = circuit.loom;
			const pin = [...contacts.values()].find(
				(one) => one.role === role && parts.get(one.part)?.kind === "battery",
			);
			return pin && circuit.node(pinNode(pin.id));
		};
		found = { feed: post("+"), ground: post("-") };
		posts.set(circuit, found);
	}
	return found;
}

/** Volts lost along branches in all that should lose little: the loom, the metal, fuses and closed contacts. */
export function lossAlong(point: Operating, branches: readonly number[]): number {
	return branches.reduce((sum, branch) => sum + lossOf(point, branch), 0);
}

/** Volts lost in one branch; 0 in a device that is meant to take them. */
export function lossOf(point: Operating, branch: number): number {
	const { circuit, volts } = point;
	if (!shouldLoseLittle(circuit, branch)) return 0;
	const { a, b } = circuit.branches[branch]!;
	return Math.abs(voltsAt(volts, a) - voltsAt(volts, b));
}

function shouldLoseLittle(circuit: Circuit, branch: number): boolean {
	const { what, element } = circuit.branches[branch]!.owner;
	if (what !== "device") return true;
	const kind = deviceKind(circuit, branch);
	return kind === "fuse" || kind === "switch" || (kind === "relay" && element !== "coil");
}
