/** Twin sensors that had a supply or return each must keep it. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Monitor } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { netAt } from "./support/nets.js";
import { sensorSignals } from "./support/sensors.js";
import { contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "twin-sensors";

/**
 * Twins are sensors whose inputs a monitor compares. Their supplies, and their returns, may be one conductor only where
 * they were one as delivered; of a loom without its forerunner nothing is asked.
 */
export const twinSensors: Rule = {
	id,
	title: "Twin sensors do not come to share a supply or a return",
	source: "as the car's maker parted them; common practice, no source",
	check(circuit, before) {
		if (before === undefined) return [];
		const done = new Set<string>();
		return circuit.loom.monitors.flatMap((monitor) => {
			const pair = [monitor.contact, monitor.twin].join();
			if (monitor.twin === "" || done.has(pair)) return [];
			done.add(pair);
			return checkTwins(circuit, before, monitor);
		});
	},
};

function checkTwins(circuit: Circuit, before: Circuit, { contact, twin }: Monitor): Finding[] {
	const [one, two] = [contact, twin].map((pin) => sensorOn(circuit, pin));
	if (one === undefined || two === undefined || one === two) return [];
	return (["supply", "return"] as const).flatMap((role) => {
		const pins = [one, two].map((part) =>
			contactsOfPart(circuit.loom, part).find((pin) => pin.role === role),
		);
		const [a, b] = pins;
		if (a === undefined || b === undefined || !joined(circuit, a, b)) return [];
		const known = [a, b].every((pin) => before.loom.contacts.has(pin.id));
		return known && joined(before, a, b) ? [] : [report(circuit, role, a, b)];
	});
}

const joined = (circuit: Circuit, a: Contact, b: Contact) => netAt(circuit, a.id) === netAt(circuit, b.id);

function sensorOn(circuit: Circuit, input: string): string | undefined {
	return sensorSignals(circuit).find((signal) => signal.input.id === input)?.sensor.id;
}

function report(circuit: Circuit, role: "supply" | "return", a: Contact, b: Contact): Finding {
	return finding(circuit, id, "warn", {
		where: list(
			[a, b].map((pin) => `${partText(circuit.loom, pin.part)}: ${contactText(circuit.loom, pin.id)}`),
		),
		why: `The twins share one ${role}. One fault takes both away, and what one of them should show the other hides.`,
		mend: `Give each its own ${role} pin of the unit.`,
		path: [a.part, a.id, b.id, b.part],
	});
}
