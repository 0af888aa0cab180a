/** What a load gets: volts lost in the loom on its feed and on its ground, from the solved network. */
import { branchAmps, type Circuit, type Operating, voltsAt } from "../circuit/index.js";
import { finding } from "./support/finding.js";
import { downstream, type Flow, fromPosts, lossAlong, lossOf, upstream } from "./support/flow.js";
import { acrossLoad, type Load, type LoadKind, loadsOf } from "./support/loads.js";
import { wholeConditions } from "./support/points.js";
import { namesAlong } from "./support/ways.js";
import { amount, list, partText, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "voltage-drop";

/** Most volts lost; what is not given is not judged. */
interface Limit {
	readonly feed?: number;
	readonly ground?: number;
	/** A ground that carries more than 100 A may lose this per 100 A instead. */
	readonly groundPer100A?: number;
	/** Feed and ground together, as a share of the source's volts. */
	readonly share?: number;
}

/**
 * Rows of reference/electrical/practice-limits.csv: ground 0.1 V row 017; starter cable 0.5 V rows 010 and 020, its
 * ground 0.2 V row 011, or 0.2 V per 100 A row 001. 5 % is 0.6 V of 12 V, for lamps up to headlamps and for units: from
 * memory, handbook tables of allowed drops in cars. 7.14 % is 1 V of 14 V: from memory, FAA AC 43.13-1B table 11-6. 0.2 V
 * for the ground of other loads: common practice, no source. Terminal 50 1.4 V: from memory; its ground is the motor's and judged there.
 */
export const LIMITS: Readonly<Record<LoadKind, Limit>> = {
	lighting: { share: 0.05, ground: 0.2 },
	"control unit": { share: 0.05, ground: 0.1 },
	"starter motor": { feed: 0.5, ground: 0.2, groundPer100A: 0.2 },
	"terminal 50": { feed: 1.4 },
	other: { share: 0.0714, ground: 0.2 },
};

/** A load counts as working from this share of the source's volts across it, and this current. */
const WORKING_SHARE = 0.3;
const LEAST_AMPS = 1e-4;

interface Drop {
	readonly load: Load;
	readonly condition: string;
	readonly point: Operating;
	readonly feed: Flow;
	readonly ground: Flow;
	readonly feedVolts: number;
	readonly groundVolts: number;
	/** The limit that is passed, in words: `together at most 0.38 V`. */
	readonly limit: string;
	/** How far over: 1 is just at the limit. */
	readonly over: number;
	/** The wire, contact, joint or part that loses most on the side that is over. */
	readonly worst: string;
}

/**
 * In each condition in which the car stands whole and the load works. What a switch, relay contact or fuse loses
 * counts; what a driver inside a control unit or a series resistor takes does not. While the starter turns the
 * battery sags and only the starter's own circuits are judged.
 */
export const voltageDrop: Rule = {
	id,
	title: "Every load gets its volts",
	source:
		"reference/electrical/practice-limits.csv rows 001, 010, 011, 017, 020; shares of 5 % and 7.14 %: from memory, handbook tables of allowed drops in cars and FAA AC 43.13-1B table 11-6",
	check(circuit) {
		const worst = new Map<Load, Drop>();
		for (const { condition, point } of wholeConditions(circuit)) {
			const least = WORKING_SHARE * systemVolts(point);
			// A motor at rest has the battery's volts across its open contact, and no current.
			const works = (load: Load) =>
				Math.abs(acrossLoad(point, load)) > least && Math.abs(branchAmps(point, load.branch)) > LEAST_AMPS;
			const cranking = loadsOf(circuit).some((load) => load.kind === "starter motor" && works(load));
			for (const load of loadsOf(circuit)) {
				const starting = load.kind === "starter motor" || load.kind === "terminal 50";
				if (cranking !== starting || !works(load)) continue;
				const drop = dropAt(point, condition, load);
				if (drop !== undefined && drop.over > (worst.get(load)?.over ?? 1)) worst.set(load, drop);
			}
		}
		const groups = new Map<string, Drop[]>();
		for (const drop of worst.values()) groups.set(drop.worst, [...(groups.get(drop.worst) ?? []), drop]);
		return [...groups.values()].map((drops) => report(circuit, drops));
	},
};

/** The highest potential in the car. */
function systemVolts(point: Operating): number {
	return point.volts.reduce((most, volts) => Math.max(most, volts), 0);
}

function dropAt(point: Operating, condition: string, load: Load): Drop | undefined {
	const { a, b } = point.circuit.branches[load.branch]!;
	const [plus, minus] = branchAmps(point, load.branch) > 0 ? [a, b] : [b, a];
	const feed = upstream(point, plus);
	const ground = downstream(point, minus);
	if (!feed.arrived || !ground.arrived) return undefined;
	const [feedWay, groundWay] = [
		fromPosts(point, "feed", feed.branches),
		fromPosts(point, "ground", ground.branches),
	];
	const feedVolts = lossAlong(point, feedWay);
	const groundVolts = lossAlong(point, groundWay);
	const limit = LIMITS[load.kind];
	const hundreds = Math.abs(branchAmps(point, load.branch)) / 100;
	const judged = [
		{ what: "the feed", volts: feedVolts, most: limit.feed, side: feedWay },
		{
			what: "the ground",
			volts: groundVolts,
			most: limit.ground && Math.max(limit.ground, hundreds * (limit.groundPer100A ?? 0)),
			side: groundWay,
		},
		{
			what: "both together",
			volts: feedVolts + groundVolts,
			most: limit.share && limit.share * voltsAt(point.volts, feed.end),
			side: [...feedWay, ...groundWay],
		},
	].flatMap((row) =>
		row.most === undefined ? [] : [{ ...row, most: row.most, over: row.volts / row.most }],
	);
	const passed = judged.reduce((most, next) => (next.over > most.over ? next : most));
	const words = `${passed.what} at most ${amount(passed.most, "V")}`;
	const worst = worstOf(point, passed.side);
	return {
		load,
		condition,
		point,
		feed,
		ground,
		feedVolts,
		groundVolts,
		limit: words,
		over: passed.over,
		worst,
	};
}

/** Id of what loses most; a contact's crimp and mating count together. */
function worstOf(point: Operating, branches: readonly number[]): string {
	const losses = new Map<string, number>();
	for (const branch of branches) {
		const owner = point.circuit.branches[branch]!.owner.id;
		losses.set(owner, (losses.get(owner) ?? 0) + lossOf(point, branch));
	}
	return [...losses].reduce((most, next) => (next[1] > most[1] ? next : most), ["", 0])[0];
}

function report(circuit: Circuit, drops: readonly Drop[]): Finding {
	const { loom } = circuit;
	const drop = drops.reduce((most, next) => (next.over > most.over ? next : most));
	const { feedVolts, groundVolts, load, point, condition } = drop;
	const wire = loom.wires.get(drop.worst);
	const culprit = wire ? wireText(loom, wire.id) : partText(loom, drop.worst);
	const all = [...drop.feed.branches, ...drop.ground.branches];
	const lost = all
		.filter((branch) => circuit.branches[branch]!.owner.id === drop.worst)
		.reduce((sum, branch) => sum + lossOf(point, branch), 0);
	const amps = Math.abs(branchAmps(point, load.branch));
	const others =
		drops.length > 1 ? ` Also over: ${list(drops.filter((d) => d !== drop).map((d) => name(d.load)))}.` : "";
	return finding(circuit, id, "warn", {
		where: `${name(load)}, ${partText(loom, load.part.id)}; most is lost in ${culprit}`,
		why: `In '${condition}' at ${amount(amps, "A")} the feed loses ${amount(feedVolts, "V")} and the ground ${amount(groundVolts, "V")}; right is for ${drop.limit}. ${culprit} alone takes ${amount(lost, "V")}.${others}`,
		mend: wire
			? `Use a thicker or shorter wire for ${wire.id} (${wire.mm2} mm2, ${wire.metres} m), or feed the load by another way.`
			: `Clean or renew ${culprit}, then measure the drop again under load.`,
		path: [
			...namesAlong(circuit, drop.feed.branches.toReversed()),
			load.part.id,
			...namesAlong(circuit, drop.ground.branches),
		],
	});
}

const name = (load: Load) =>
	load.element === ""
		? load.part.id
		: load.element.includes(".")
			? load.element
			: `${load.part.id} ${load.element}`;
