/** Nothing that stayed may depend on a part that was taken out. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, wiresAtContact } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere, netAt } from "./support/nets.js";
import { removedOn } from "./support/removed.js";
import { SENSOR_KINDS, unitPins } from "./support/sensors.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, list, partText } from "./support/words.js";
import { type Compared, lostLoads } from "./support/worked.js";
import type { Finding, Rule } from "./types.js";

const id = "needs-removed-part";

/**
 * Loads whose current came or went through a removed part or plug, and pins of sensors that were joined through one
 * to a control unit (a loop in a plug), and are joined to none now.
 */
export const needsRemovedPart: Rule = {
	id,
	title: "Nothing depends on a part that was taken out",
	source: "the ways of the loom as delivered",
	check(circuit, before) {
		if (before === undefined) return [];
		const loads = lostLoads(circuit, before).flatMap((lost) => {
			const removed = removedOn(circuit, before, lost);
			return removed.length > 0 ? [lostLoad(circuit, lost, removed)] : [];
		});
		const groups = new Map<string, Cut[]>();
		for (const pin of sensorPins(circuit)) {
			const cut = checkPin(circuit, before, pin);
			if (cut === undefined) continue;
			// Sensors that hung on one conductor have one cause.
			const key = [netAt(before, pin.id), ...cut.removed].join();
			groups.set(key, [...(groups.get(key) ?? []), cut]);
		}
		return [...loads, ...[...groups.values()].map((group) => report(circuit, group))];
	},
};

function lostLoad(circuit: Circuit, lost: Compared, removed: readonly string[]): Finding {
	const { load, condition, before, now } = lost;
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, load.part.id)}${load.element && `, ${load.element}`}`,
		why: `As delivered its current ran through ${list(removed)}, taken out by the recipe. In '${condition}' it had ${amount(before.volts, "V")} and has ${amount(now.volts, "V")} now.`,
		mend: `Join what ${list(removed)} joined, or give it a feed and ground of its own.`,
		path: [...contactsOfPart(circuit.loom, load.part.id).map((pin) => pin.id), load.part.id],
	});
}

function sensorPins({ loom }: Circuit): Contact[] {
	return [...loom.contacts.values()].filter(
		(pin) =>
			SENSOR_KINDS.has(loom.parts.get(pin.part)?.kind ?? "") && wiresAtContact(loom, pin.id).length > 0,
	);
}

interface Cut {
	readonly pin: Contact;
	/** Pins of units that it reached as delivered. */
	readonly units: readonly Contact[];
	readonly removed: readonly string[];
}

function checkPin(circuit: Circuit, before: Circuit, pin: Contact): Cut | undefined {
	if (!before.loom.contacts.has(pin.id) || unitsOn(circuit, pin.id).length > 0) return undefined;
	const units = unitsOn(before, pin.id);
	if (units.length === 0) return undefined;
	const ways = reach(before, [pinOf(before, pin)], (k) => isLoom(before, k) && isThere(before, k));
	const way = namesAlong(before, ways.wayTo(pinOf(before, units[0]!)));
	const removed = removedAlong(circuit, before, way);
	return removed.length === 0 ? undefined : { pin, units, removed };
}

function report(circuit: Circuit, group: readonly Cut[]): Finding {
	const [{ units, removed }] = group as [Cut];
	const pins = group.map(({ pin }) => pin);
	return finding(circuit, id, "stop", {
		where: list(pins.map((pin) => contactText(circuit.loom, pin.id))),
		why: `As delivered ${pins.length === 1 ? "it" : "they"} reached ${list(units.map((unit) => unit.id))} through ${list(removed)}, taken out by the recipe. Now ${pins.length === 1 ? "it reaches" : "they reach"} no unit.`,
		mend: `Run what ${pins.length === 1 ? "it hangs" : "they hang"} on to ${units[0]!.part} by another way.`,
		path: pins.flatMap((pin) => [pin.part, pin.id]),
	});
}

function unitsOn(circuit: Circuit, pin: string): readonly Contact[] {
	return unitPins(circuit).get(netAt(circuit, pin)) ?? [];
}

function removedAlong(circuit: Circuit, before: Circuit, way: readonly string[]): string[] {
	const parts = way.flatMap((name) => {
		const contact = before.loom.contacts.get(name);
		return contact ? [contact.part, contact.connector] : [];
	});
	return [...new Set(parts)].filter((part) => part !== "" && !circuit.loom.parts.has(part));
}
