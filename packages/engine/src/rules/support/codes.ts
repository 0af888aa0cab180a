/** Trouble codes that a sound car would set: a unit's own windows on its own pins, in the condition it looks in. */
import type { Circuit } from "../../circuit/index.js";
import { type Contact, type Monitor, otherHalf } from "../../loom/index.js";
import { netAt, netOf } from "./nets.js";
import { conditionsOf } from "./points.js";
import { quantityValue } from "./quantities.js";
import { isPowered } from "./unit-pins.js";

export interface SetCode {
	readonly monitor: Monitor;
	/** Volts or amperes that the unit sees. */
	readonly value: number;
}

const cache = new WeakMap<Circuit, readonly SetCode[]>();

/** In table order. A unit that is not powered sets none; where nothing joins the points it sees nothing. */
export function setCodes(circuit: Circuit): readonly SetCode[] {
	let found = cache.get(circuit);
	if (found === undefined) {
		found = circuit.loom.monitors.flatMap((monitor) => judge(circuit, monitor) ?? []);
		cache.set(circuit, found);
	}
	return found;
}

function judge(circuit: Circuit, monitor: Monitor): SetCode | undefined {
	const { unit, twin, ratio, below, above } = monitor;
	const at = conditionsOf(circuit).settled.find(({ condition }) => condition === monitor.when);
	if (at === undefined || !isPowered(at.point, unit)) return undefined;
	const own = quantityValue(at.point, monitor, unit);
	const other = twin === "" ? 0 : quantityValue(at.point, { ...monitor, contact: twin }, unit);
	if (own === undefined || other === undefined) return undefined;
	const value = own - (twin === "" ? 0 : ratio * other);
	const wrong = (below !== undefined && value < below) || (above !== undefined && value > above);
	return wrong ? { monitor, value } : undefined;
}

/** Does no other pin of a part and no ground point lie on this pin's net? */
export function isAlone(circuit: Circuit, pin: Contact): boolean {
	const { contacts, joints, parts } = circuit.loom;
	const net = netAt(circuit, pin.id);
	for (const other of contacts.values()) {
		const inLine =
			parts.get(other.part)?.kind === "connector" && otherHalf(circuit.loom, other) !== undefined;
		if (other.id !== pin.id && !inLine && netAt(circuit, other.id) === net) return false;
	}
	for (const joint of joints.values())
		if (joint.kind === "ground" && netOf(circuit, circuit.node(joint.id) ?? -1) === net) return false;
	return true;
}

/** `below 0.2 V` or `above 4.7 V`: the limit that is passed. */
export function limitText({ monitor, value }: SetCode): string {
	const unit = monitor.measures === "amps" ? "A" : "V";
	return monitor.below !== undefined && value < monitor.below
		? `below ${monitor.below} ${unit}`
		: `above ${monitor.above} ${unit}`;
}
