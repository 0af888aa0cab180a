/** A switch must pull its input far enough for the unit to know it. */
import { type Circuit, voltsAt } from "../circuit/index.js";
import { insideNode } from "../circuit/names.js";
import type { Contact, Part } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { groundNets, netAt } from "./support/nets.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { positionOf } from "./support/positions.js";
import { isPowered, pinSetting, pinVolts } from "./support/unit-pins.js";
import { amount, contactText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "weak-input";

/** Share of the pull-up's volts below which an input is low, above which it is high. */
export const LOW_SHARE = 0.3;
export const HIGH_SHARE = 0.7;

/**
 * Inputs with a pull-up and one switch on their conductor, in the listed conditions in which the car stands whole and
 * the unit works: the input moves between the switch's positions, but comes to rest between low and high in one.
 */
export const weakInput: Rule = {
	id,
	title: "Every switch pulls its input far enough",
	source: `low below ${LOW_SHARE * 100} %, high above ${HIGH_SHARE * 100} % of the pull-up: common practice, no source`,
	check(circuit) {
		const switches = switchesByNet(circuit);
		return [...circuit.loom.contacts.values()].flatMap((input) => {
			if (input.role !== "input pull-up" || circuit.loom.parts.get(input.part)?.kind !== "control unit")
				return [];
			const net = netAt(circuit, input.id);
			const [part, ...more] = switches.get(net) ?? [];
			if (part === undefined || more.length > 0 || groundNets(circuit).has(net)) return [];
			return checkInput(circuit, input, part) ?? [];
		});
	},
};

function switchesByNet(circuit: Circuit): Map<number, Part[]> {
	const found = new Map<number, Part[]>();
	for (const contact of circuit.loom.contacts.values()) {
		const part = circuit.loom.parts.get(contact.part);
		if (part?.kind !== "switch") continue;
		const net = netAt(circuit, contact.id);
		const known = found.get(net) ?? [];
		if (!known.includes(part)) found.set(net, [...known, part]);
	}
	return found;
}

function checkInput(circuit: Circuit, input: Contact, part: Part): Finding | undefined {
	const ground = circuit.node(insideNode(input.part, "ground"))!;
	const full = pinSetting(circuit, input, "volts") ?? 5;
	const seen = wholeConditions(circuit)
		.filter(({ point }) => isPowered(point, input.part))
		.map((at) => ({ at, volts: pinVolts(at.point, input.id) - voltsAt(at.point.volts, ground) }));
	const between = seen.find(({ volts }) => volts > LOW_SHARE * full && volts < HIGH_SHARE * full);
	const moved = seen.some(({ at, volts }) => {
		const other = between && positionOf(at.settings, part) !== positionOf(between.at.settings, part);
		return other && Math.abs(volts - between.volts) > full / 10;
	});
	return between && moved ? report(circuit, input, part, between.at, between.volts) : undefined;
}

function report(circuit: Circuit, input: Contact, part: Part, at: Settled, volts: number): Finding {
	return finding(circuit, id, "warn", {
		where: `${contactText(circuit.loom, input.id)}, from ${partText(circuit.loom, part.id)}`,
		why: `With ${part.id} in ${positionOf(at.settings, part)} ('${at.condition}') the input stands at ${amount(volts, "V")}, neither low nor high: ${input.part} may take it for either.`,
		mend: `Find what lies in series with ${part.id} or feeds its line: a load, a second pull-up, a bad ground.`,
		path: [input.part, input.id, part.id],
	});
}
