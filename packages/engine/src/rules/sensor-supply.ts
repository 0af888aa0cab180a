/** A sensor with a supply pin must get its supply. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Part, wiresAtContact } from "../loom/index.js";
import { feedPasses, pinOf, supplyPosts } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { SENSOR_KINDS, sensorSignals } from "./support/sensors.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "sensor-supply";

/**
 * From a `sensor supply` pin, of the unit that reads it where it has one, or from battery or generator over fuses and
 * contacts. A reading is a share of its own unit's 5 V: those of another unit make it wrong.
 */
export const sensorSupply: Rule = {
	id,
	title: "Each sensor gets its supply from the unit that reads it",
	source: "ratiometric sensors read against their own unit's supply: common practice, no source",
	check(circuit) {
		const readers = new Map<string, string[]>();
		for (const { sensor, input } of sensorSignals(circuit))
			readers.set(sensor.id, [...(readers.get(sensor.id) ?? []), input.part]);
		return [...circuit.loom.parts.values()]
			.filter((part) => SENSOR_KINDS.has(part.kind))
			.flatMap((part) => checkSensor(circuit, part, readers.get(part.id) ?? []) ?? []);
	},
};

function checkSensor(circuit: Circuit, sensor: Part, readers: readonly string[]): Finding | undefined {
	const supply = contactsOfPart(circuit.loom, sensor.id).find((contact) => contact.role === "supply");
	if (supply === undefined || wiresAtContact(circuit.loom, supply.id).length === 0) return undefined;
	const ways = reach(circuit, [pinOf(circuit, supply)], feedPasses(circuit, true));
	const posts = supplyPosts(circuit).some((post) => ways.has(pinOf(circuit, post)));
	const regulated = regulators(circuit).filter((pin) => ways.has(pinOf(circuit, pin)));
	const own = regulators(circuit).filter((pin) => readers.includes(pin.part));
	const right =
		own.length === 0 ? posts || regulated.length > 0 : posts || regulated.some((pin) => own.includes(pin));
	if (right) return undefined;
	const units = list([...new Set(own.map((pin) => pin.part))]);
	const other = regulated[0];
	return finding(circuit, id, "stop", {
		where: `${partText(circuit.loom, sensor.id)}: supply ${contactText(circuit.loom, supply.id)}`,
		why: other
			? `${units} reads the sensor, but its supply comes from ${contactText(circuit.loom, other.id)}. The reading is a share of another unit's supply.`
			: "Its supply comes from nowhere. The sensor is dead.",
		mend: `Run its supply to a sensor supply${units === "" ? "" : ` of ${units}`}.`,
		path: [...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!)).toReversed(), sensor.id],
	});
}

function regulators(circuit: Circuit): Contact[] {
	return [...circuit.loom.contacts.values()].filter((pin) => pin.role === "sensor supply");
}
