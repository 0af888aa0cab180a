/** With any one fuse pulled, what it feeds must be dead. */
import { branchAmps, type Circuit, type Operating } from "../circuit/index.js";
import { contactsOfPart, type Part } from "../loom/index.js";
import { deviceKind, isFuse } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { acrossLoad, type Load, loadsOf } from "./support/loads.js";
import { changed, wholeConditions } from "./support/points.js";
import { namesAlong } from "./support/ways.js";
import { amount, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "back-feed";

/** Above this across a load it is still fed. */
export const FED_VOLTS = 1;
/** And above this share of the current it drew before. */
const FED_SHARE = 0.05;

interface Case {
	readonly condition: string;
	readonly point: Operating;
	/** Branch number of the fuse's element. */
	readonly element: number;
	/** Loads whose current comes through the fuse. */
	readonly loads: readonly Load[];
}

/**
 * In each condition in which the car stands whole, every fuse that carries a load's current is pulled in turn.
 * A running generator feeds the car beside the battery, so those conditions are left out. Conditions in which a
 * fuse feeds the same loads are tried once. A second way through a series resistor is another speed, and meant.
 */
export const backFeed: Rule = {
	id,
	title: "A pulled fuse leaves its loads dead",
	source: `still fed above ${FED_VOLTS} V: common practice, no source`,
	check(circuit) {
		const cases = new Map<string, Map<string, Case>>();
		for (const { condition, point } of wholeConditions(circuit)) {
			if (generating(circuit, point)) continue;
			for (const [fuse, found] of fusesAtWork(circuit, point)) {
				const key = found.loads.map((load) => load.branch).join();
				const known = cases.get(fuse) ?? new Map<string, Case>();
				if (!known.has(key)) known.set(key, { condition, point, ...found });
				cases.set(fuse, known);
			}
		}
		return [...cases].flatMap(([fuse, known]) => {
			const part = circuit.loom.parts.get(fuse)!;
			for (const one of known.values()) {
				const found = pull(circuit, part, one);
				if (found !== undefined) return [found];
			}
			return [];
		});
	},
};

function generating(circuit: Circuit, point: Operating): boolean {
	return [...circuit.loom.parts.values()]
		.filter((part) => part.kind === "generator")
		.flatMap((part) => circuit.branchesOf.get(part.id) ?? [])
		.some((branch) => deviceKind(circuit, branch) === "generator" && point.siemens[branch]! > 0);
}

/** Each fuse through which loads draw in this condition, with those loads. */
function fusesAtWork(circuit: Circuit, point: Operating): Map<string, { element: number; loads: Load[] }> {
	const found = new Map<string, { element: number; loads: Load[] }>();
	for (const load of loadsOf(circuit)) {
		if (Math.abs(acrossLoad(point, load)) <= FED_VOLTS) continue;
		for (const branch of feedOf(point, load)) {
			if (!isFuse(circuit, branch)) continue;
			const part = circuit.branches[branch]!.owner.id;
			const entry = found.get(part) ?? { element: branch, loads: [] };
			entry.loads.push(load);
			found.set(part, entry);
		}
	}
	return found;
}

function pull(circuit: Circuit, fuse: Part, one: Case): Finding | undefined {
	const { point, element, loads, condition } = one;
	const without = changed(point, [{ branch: element, siemens: 0 }]);
	if (without === undefined) return undefined;
	const ways = loads
		.filter((load) => stillFed(point, without, load))
		.map((load) => ({ load, way: feedOf(without, load) }))
		.filter(({ way }) => !way.some((branch) => deviceKind(circuit, branch) === "resistor"));
	if (ways.length === 0) return undefined;
	const [{ load, way }] = ways as [(typeof ways)[0]];
	const volts = Math.abs(acrossLoad(without, load));
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, fuse.id)}: ${list(ways.map((one) => partText(circuit.loom, one.load.part.id)))}`,
		why: `With ${fuse.id} pulled in '${condition}', ${load.part.id} still gets ${amount(volts, "V")} by another way. A fuse that does not cut its circuit off protects nobody.`,
		mend: `Part the two feeds on the path shown, so that ${load.part.id} hangs on one fuse only.`,
		path: [
			...namesAlong(circuit, way.toReversed()),
			load.part.id,
			...contactsOfPart(circuit.loom, fuse.id).map((pin) => pin.id),
		],
	});
}

/** Does it still draw, as volts across a blocking LED would not say? */
function stillFed(before: Operating, without: Operating, load: Load): boolean {
	const amps = (point: Operating) => Math.abs(branchAmps(point, load.branch));
	return Math.abs(acrossLoad(without, load)) > FED_VOLTS && amps(without) > FED_SHARE * amps(before);
}

/** Branches from the load's plus up to where its current comes from. */
function feedOf(point: Operating, load: Load): readonly number[] {
	const { a, b } = point.circuit.branches[load.branch]!;
	return upstream(point, acrossLoad(point, load) > 0 ? a : b).branches;
}
