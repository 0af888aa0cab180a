/** Lamps that must light when a switch is in one position, and only then. */
import { type Circuit, type Operating, voltsAt } from "../../circuit/index.js";
import { contactsOfPart, type Part } from "../../loom/index.js";
import type { Finding } from "../types.js";
import { feedPasses, pinOf, supplyPosts } from "./feeds.js";
import { finding } from "./finding.js";
import { upstream } from "./flow.js";
import { type Load, loadsOf } from "./loads.js";
import { pointWith, type Settled, wholeConditions } from "./points.js";
import {
	combinations,
	conditionsWith,
	MEANINGS,
	type Meaning,
	positionsMeaning,
	settingsText,
	withDuty,
} from "./positions.js";
import { namesAlong, reach } from "./ways.js";
import { amount, list, partText } from "./words.js";

/** Least share of the battery's volts at a lamp that lights. */
const LIT_VOLTS = 0.8;
/** Least share of its rated power. */
const LIT_POWER = 0.5;
/** From this share of the battery's volts on a lamp counts as lit when it should be dark. */
const DARK_VOLTS = 0.2;

export interface Wanted {
	readonly rule: string;
	readonly lamps: string;
	/** The duties that decide; the first that the car has. */
	readonly duties: readonly string[];
	readonly meaning: Meaning;
}

/**
 * Must light: in the listed conditions with the key at run and the switch so set; where there is none, the first with
 * the key at run is taken with the switch set. Must be dark: in every listed whole condition with the switch
 * otherwise, and in every other position. The car's other settings stand as listed.
 */
export function checkSwitchedLamps(circuit: Circuit, wanted: Wanted): Finding[] {
	const lamps = loadsOf(circuit).filter((load) => load.part.duty === wanted.lamps);
	if (lamps.length === 0) return [];
	const switches = wanted.duties.map((duty) => withDuty(circuit, duty)).find((found) => found.length > 0);
	if (switches === undefined) return [noSwitch(circuit, wanted, lamps)];
	const nameless = switches.filter((part) => positionsMeaning(part, wanted.meaning).length === 0);
	if (nameless.length > 0) return nameless.map((part) => unnamed(circuit, wanted, part));
	const running = conditionsWith(circuit, withDuty(circuit, "start key"), "run");
	const on = pointsOn(circuit, wanted, switches, running);
	const off = pointsOff(circuit, wanted, switches, running);
	return lamps.flatMap((lamp) => [
		...(on.map((at) => unlit(circuit, wanted, switches, lamp, at)).find((found) => found) ?? []),
		...(off.map((at) => wronglyLit(circuit, wanted, lamp, at)).find((found) => found) ?? []),
	]);
}

interface At {
	/** The state of the car in words. */
	readonly when: string;
	readonly point: Operating;
}

function pointsOn(
	circuit: Circuit,
	wanted: Wanted,
	switches: readonly Part[],
	running: readonly Settled[],
): At[] {
	const listed = conditionsWith(circuit, switches, wanted.meaning).filter((c) => running.includes(c));
	if (listed.length > 0) return listed.map(({ condition, point }) => ({ when: `'${condition}'`, point }));
	const set = new Map(switches.map((part) => [part.id, positionsMeaning(part, wanted.meaning)[0]!]));
	return running.slice(0, 1).flatMap((base) => setAnew(circuit, base, set));
}

function pointsOff(
	circuit: Circuit,
	wanted: Wanted,
	switches: readonly Part[],
	running: readonly Settled[],
): At[] {
	const on = (part: Part, position: string) => positionsMeaning(part, wanted.meaning).includes(position);
	const listed = wholeConditions(circuit)
		.filter(({ settings }) =>
			switches.every((part) => !on(part, settings.get(part.id) ?? part.positions[0]!.name)),
		)
		.map(({ condition, point }) => ({ when: `'${condition}'`, point }));
	const others = combinations(switches).filter((set) =>
		switches.every((part) => !on(part, set.get(part.id)!)),
	);
	// A driver that a listed condition turns on for the switch's sake must not be counted with the switch at rest.
	const base = running.find(({ settings }) =>
		switches.every((part) => !on(part, settings.get(part.id) ?? "")),
	);
	return [...listed, ...(base ? others.flatMap((set) => setAnew(circuit, base, set)) : [])];
}

function setAnew(circuit: Circuit, base: Settled, set: ReadonlyMap<string, string>): At[] {
	const when = `'${base.condition}' with ${settingsText(set)}`;
	const point = pointWith(circuit, new Map([...base.settings, ...set]), when);
	return point === undefined ? [] : [{ when, point }];
}

/** Share of the highest potential in the car that lies across the lamp. */
function shareAt({ volts, circuit }: Operating, lamp: Load): { volts: number; share: number } {
	const { a, b } = circuit.branches[lamp.branch]!;
	const across = Math.abs(voltsAt(volts, a) - voltsAt(volts, b));
	const system = volts.reduce((most, v) => Math.max(most, v), 0);
	return { volts: across, share: system > 0 ? across / system : 0 };
}

function unlit(
	circuit: Circuit,
	wanted: Wanted,
	switches: readonly Part[],
	lamp: Load,
	at: At,
): Finding[] | undefined {
	const { volts, share } = shareAt(at.point, lamp);
	const power = lamp.part.kind === "lamp" ? (volts / (lamp.part.values.at_volts ?? 13.5)) ** 2 : 1;
	if (share >= LIT_VOLTS && power >= LIT_POWER) return undefined;
	const names = list(switches.map((part) => part.id));
	return [
		finding(circuit, wanted.rule, "warn", {
			where: `${partText(circuit.loom, lamp.part.id)}, ${wanted.lamps}`,
			why: `It gets ${amount(volts, "V")} in ${at.when}: too little to light (at least ${LIT_VOLTS * 100} % of the battery's volts and ${LIT_POWER * 100} % of its power).`,
			mend: `Follow its feed from the fuse through ${names} to the lamp, then its ground, and close the gap.`,
			path: [...intended(circuit, lamp), lamp.part.id],
		}),
	];
}

function wronglyLit(circuit: Circuit, wanted: Wanted, lamp: Load, at: At): Finding[] | undefined {
	const { volts, share } = shareAt(at.point, lamp);
	if (share < DARK_VOLTS) return undefined;
	const { a, b } = circuit.branches[lamp.branch]!;
	const plus = voltsAt(at.point.volts, a) > voltsAt(at.point.volts, b) ? a : b;
	return [
		finding(circuit, wanted.rule, "warn", {
			where: `${partText(circuit.loom, lamp.part.id)}, ${wanted.lamps}`,
			why: `It gets ${amount(volts, "V")} in ${at.when}, where it must be dark.`,
			mend: "Find what feeds it past the switch on the path shown and part the two.",
			path: [...namesAlong(circuit, upstream(at.point, plus).branches.toReversed()), lamp.part.id],
		}),
	];
}

/** The way a feed could take to the lamp with every contact closed; the lamp's own pins where there is none. */
function intended(circuit: Circuit, lamp: Load): string[] {
	const posts = supplyPosts(circuit).map((post) => pinOf(circuit, post));
	const ways = reach(circuit, posts, feedPasses(circuit, true));
	const pins = contactsOfPart(circuit.loom, lamp.part.id);
	const fed = pins.find((pin) => ways.has(pinOf(circuit, pin)));
	return fed ? namesAlong(circuit, ways.wayTo(pinOf(circuit, fed))) : pins.map((pin) => pin.id);
}

function noSwitch(circuit: Circuit, wanted: Wanted, lamps: readonly Load[]): Finding {
	return finding(circuit, wanted.rule, "warn", {
		where: `${wanted.lamps}s ${list(lamps.map((lamp) => lamp.part.id))}`,
		why: `No part has the duty ${list(wanted.duties.map((duty) => `'${duty}'`))}, so nobody can prove that they light.`,
		mend: `Give the switch that lights them the duty '${wanted.duties[0]}' in the table of parts.`,
		path: lamps.map((lamp) => lamp.part.id),
	});
}

function unnamed(circuit: Circuit, wanted: Wanted, part: Part): Finding {
	return finding(circuit, wanted.rule, "warn", {
		where: `${partText(circuit.loom, part.id)}, ${part.duty}`,
		why: `None of its positions (${part.positions.map((p) => p.name).join(", ")}) is named for '${wanted.meaning}', so the ${wanted.lamps}s cannot be proved.`,
		mend: `Name the position one of: ${MEANINGS[wanted.meaning].join(", ")}.`,
		path: [part.id],
	});
}
