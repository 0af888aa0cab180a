/** The starter must not turn with a gear engaged and the clutch up. */
import type { Circuit, Operating } from "../circuit/index.js";
import { contactsOfPart, type Part } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { pointWith, wholeConditions } from "./support/points.js";
import {
	combinations,
	conditionsWith,
	MEANINGS,
	type Meaning,
	positionsMeaning,
	settingsText,
	withDuty,
} from "./support/positions.js";
import { namesAlong } from "./support/ways.js";
import { list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "start-interlock";

/** Duties of the switches that decide, and the position that permits a start. */
export const PERMITS: Readonly<Record<string, Meaning>> = {
	"clutch switch": "pressed",
	"neutral switch": "neutral",
	selector: "park or neutral",
};

/**
 * Tries every combination of positions of the clutch and neutral switches with the key at start; a car with
 * neither is judged by its selector. Drivers of control units stand as in the listed conditions with the key at
 * start, each of which is tried; without one, as in the others.
 *
 * Positions are known by name: clutch `pressed` or `down`; neutral `neutral` or `N`; selector `P`, `N`, `park`,
 * `neutral`; key `start` or `crank`. Any other position counts as not permitting a start.
 */
export const startInterlock: Rule = {
	id,
	title: "No start in gear without the clutch",
	source:
		"solenoid at rest unless clutch pressed, gearbox neutral, or selector in P or N: common practice, no source",
	check(circuit) {
		const starters = [...circuit.loom.parts.values()].filter((part) => part.kind === "starter");
		if (starters.length === 0) return [];
		const keys = withDuty(circuit, "start key");
		const switches = deciding(circuit);
		const nameless = [
			...keys
				.filter((key) => positionsMeaning(key, "start").length === 0)
				.map((key) => unnamed(circuit, key, "start")),
			...switches
				.filter((part) => positionsMeaning(part, PERMITS[part.duty]!).length === 0)
				.map((part) => unnamed(circuit, part, PERMITS[part.duty]!)),
		];
		if (keys.length === 0) return starters.map((starter) => noKey(circuit, starter));
		if (nameless.length > 0) return nameless;
		const trials = tryAll(circuit, keys, switches);
		return starters.flatMap((starter) => judge(circuit, starter, switches, trials));
	},
};

/** Clutch and neutral switches; where there is neither, the selector. */
export function deciding(circuit: Circuit): Part[] {
	const manual = [...withDuty(circuit, "clutch switch"), ...withDuty(circuit, "neutral switch")];
	return manual.length > 0 ? manual : withDuty(circuit, "selector");
}

interface Trial {
	readonly positions: ReadonlyMap<string, string>;
	readonly permitted: boolean;
	/** Listed condition whose other settings hold. */
	readonly base: string;
	/** Undefined where relays keep switching to and fro. */
	readonly point: Operating | undefined;
}

function tryAll(circuit: Circuit, keys: readonly Part[], switches: readonly Part[]): Trial[] {
	const starting = conditionsWith(circuit, keys, "start");
	const whole = starting.length > 0 ? starting : wholeConditions(circuit);
	const bases =
		whole.length > 0 ? whole : [{ condition: "nothing set", settings: new Map<string, string>() }];
	const start = keys.map((key): [string, string] => [key.id, positionsMeaning(key, "start")[0]!]);
	const done = new Set<string>();
	const trials: Trial[] = [];
	for (const { condition, settings } of bases)
		for (const positions of combinations(switches)) {
			const all = new Map([...settings, ...start, ...positions]);
			const same = [...all]
				.map((pair) => pair.join("="))
				.sort()
				.join(";");
			if (done.has(same)) continue;
			done.add(same);
			const point = pointWith(circuit, all, `${condition} with ${settingsText(positions)}`);
			const permitted = switches.some((part) =>
				positionsMeaning(part, PERMITS[part.duty]!).includes(positions.get(part.id)!),
			);
			trials.push({ positions, permitted, base: condition, point });
		}
	return trials;
}

/** Has the solenoid pulled in? */
function turns(point: Operating | undefined, starter: Part): point is Operating {
	if (point === undefined) return false;
	return point.standing.automata.some(({ spec }, k) => spec.part === starter.id && point.states[k] === 1);
}

function judge(
	circuit: Circuit,
	starter: Part,
	switches: readonly Part[],
	trials: readonly Trial[],
): Finding[] {
	const restless = trials.find(({ point }) => point === undefined);
	if (restless) return [unproved(circuit, starter, restless)];
	const turning = trials.filter(({ point }) => turns(point, starter));
	if (turning.length === 0) return [never(circuit, starter, switches)];
	const wrong = turning.filter((trial) => !trial.permitted);
	if (wrong.length === 0) return [];
	const [first] = wrong;
	const how = [...new Set(wrong.map(({ positions }) => settingsText(positions)))];
	const with_ = switches.length === 0 ? "the key alone" : list(how.map((text) => `(${text})`));
	return [
		finding(circuit, id, "stop", {
			where: partText(circuit.loom, starter.id),
			why: `The key turns the starter with ${with_}, other settings as in '${first!.base}'. In gear the car jumps when it is started.`,
			mend:
				switches.length === 0
					? "Put a clutch switch or neutral switch into the start line and give the part that duty."
					: `Run the start line through a contact of ${list(switches.map((part) => part.id))} that closes only when a start is safe.`,
			path: [...startLine(circuit, first!.point!, starter), starter.id],
		}),
	];
}

function startLine(circuit: Circuit, point: Operating, starter: Part): string[] {
	const control = contactsOfPart(circuit.loom, starter.id).find((contact) => contact.role === "50");
	if (control === undefined) return [];
	return namesAlong(circuit, upstream(point, pinOf(circuit, control)).branches.toReversed());
}

function never(circuit: Circuit, starter: Part, switches: readonly Part[]): Finding {
	return finding(circuit, id, "stop", {
		where: partText(circuit.loom, starter.id),
		why: `The starter turns in no position of ${list(switches.map((part) => part.id)) || "the key"} with the key at start.`,
		mend: "Follow the start line from the key to terminal 50 and close the gap. If a relay or control unit takes part, list a condition with the key at start and its driver on.",
		path: [...switches.map((part) => part.id), starter.id],
	});
}

function unproved(circuit: Circuit, starter: Part, { base, positions }: Trial): Finding {
	return finding(circuit, id, "stop", {
		where: partText(circuit.loom, starter.id),
		why: `With the key at start and ${settingsText(positions) || "nothing else set"}, other settings as in '${base}', relays keep switching to and fro. Nobody can say whether the starter turns.`,
		mend: "Find the relay whose coil is fed or grounded through its own contact.",
		path: [starter.id],
	});
}

function noKey(circuit: Circuit, starter: Part): Finding {
	return finding(circuit, id, "warn", {
		where: partText(circuit.loom, starter.id),
		why: "No part has the duty 'start key', so nobody can prove when the starter turns.",
		mend: "Give the key switch the duty 'start key' in the table of parts.",
		path: [starter.id],
	});
}

function unnamed(circuit: Circuit, part: Part, meaning: Meaning): Finding {
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, part.id)}, ${part.duty}`,
		why: `None of its positions (${part.positions.map((p) => p.name).join(", ")}) is named for '${meaning}', so the start interlock cannot be proved.`,
		mend: `Name the position one of: ${MEANINGS[meaning].join(", ")}.`,
		path: [part.id],
	});
}
