/** The ground of sensors must not be joined with the ground of loads. */
import { type Circuit, pinNode } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { type Load, loadsOf } from "./support/loads.js";
import { groundNets, isLoom, isThere, netAt, netOf } from "./support/nets.js";
import { wholeConditions } from "./support/points.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "mixed-ground";

/** A load up to this counts as a sensor's: indicator lamps of buttons. */
export const MOST_LOAD_AMPS = 0.05;

/** The conductor of each `sensor return` pin that is wired: no ground point of the car on it, and no load. */
export const mixedGround: Rule = {
	id,
	title: "Sensor returns have no ground point and no load on them",
	source: `loads above ${MOST_LOAD_AMPS * 1000} mA: common practice, no source`,
	check(circuit) {
		const { contacts, parts } = circuit.loom;
		const seen = new Set<number>();
		return [...contacts.values()].flatMap((pin) => {
			if (pin.role !== "sensor return" || parts.get(pin.part)?.kind !== "control unit") return [];
			const net = netAt(circuit, pin.id);
			if (seen.has(net)) return [];
			seen.add(net);
			if (groundNets(circuit).has(net)) return [grounded(circuit, pin, net)];
			const loads = loadsOn(circuit, net);
			return loads.length > 0 ? [loaded(circuit, pin, loads)] : [];
		});
	},
};

function grounded(circuit: Circuit, pin: Contact, net: number): Finding {
	const ways = waysFrom(circuit, pin);
	const ground = [...circuit.loom.joints.values()].find(
		(joint) => joint.kind === "ground" && netOf(circuit, circuit.node(joint.id) ?? -1) === net,
	);
	return finding(circuit, id, "warn", {
		where: `${contactText(circuit.loom, pin.id)}${ground ? `, joined to ground point ${ground.id}` : ""}`,
		why: "The sensors' return is joined to a ground of the car. Currents of loads flow over it and shift every reading, most when the starter or fan runs.",
		mend: "Part the return from the car's ground. It belongs on the unit's return pin alone.",
		path: ground
			? [...namesAlong(circuit, ways.wayTo(circuit.node(ground.id)!)), pin.part]
			: [pin.id, pin.part],
	});
}

/** Loads with an end on the net that draw in some whole condition. */
function loadsOn(circuit: Circuit, net: number): { load: Load; amps: number }[] {
	return loadsOf(circuit).flatMap((load) => {
		const { a, b } = circuit.branches[load.branch]!;
		if (
			load.part.kind === "control unit" ||
			![a, b].some((node) => node >= 0 && netOf(circuit, node) === net)
		)
			return [];
		const amps = Math.max(
			0,
			...wholeConditions(circuit).map(({ point }) => {
				const volts = point.volts.reduce((most, v) => Math.max(most, v), 0);
				return volts * point.siemens[load.branch]!;
			}),
		);
		return amps > MOST_LOAD_AMPS ? [{ load, amps }] : [];
	});
}

function loaded(circuit: Circuit, pin: Contact, loads: readonly { load: Load; amps: number }[]): Finding {
	const ways = waysFrom(circuit, pin);
	const [{ load }] = loads as [(typeof loads)[0]];
	const end = [circuit.branches[load.branch]!.a, circuit.branches[load.branch]!.b].find((node) =>
		ways.has(node),
	);
	return finding(circuit, id, "warn", {
		where: `${contactText(circuit.loom, pin.id)}: ${list(loads.map((one) => partText(circuit.loom, one.load.part.id)))}`,
		why: `Loads of up to ${amount(Math.max(...loads.map(({ amps }) => amps)), "A")} have their ground on the sensors' return. Every reading shifts when they are on.`,
		mend: "Give the loads a ground point of the car.",
		path: [
			load.part.id,
			...namesAlong(circuit, end === undefined ? [] : ways.wayTo(end)).toReversed(),
			pin.part,
		],
	});
}

function waysFrom(circuit: Circuit, pin: Contact) {
	const start = circuit.node(pinNode(pin.id)) ?? pinOf(circuit, pin);
	return reach(circuit, [start], (k) => isLoom(circuit, k) && isThere(circuit, k));
}
