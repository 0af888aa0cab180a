/** Every control unit must get its supplies, its grounds and what wakes it. */
import { type Circuit, voltsAt } from "../circuit/index.js";
import { insideNode } from "../circuit/names.js";
import { type Contact, contactsOfPart, type Part, wiresAtContact } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { earthOhms, isLoom, isThere } from "./support/nets.js";
import { wholeConditions } from "./support/points.js";
import { pinSetting, pinVolts } from "./support/unit-pins.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "unit-power";

/** More than this from a ground pin to the battery's minus is a bad ground. */
export const MOST_GROUND_OHMS = 0.5;
/** Least volts of a further supply, of which the unit's own minimum says nothing. */
const MIN_VOLTS = 6;

/**
 * A supply must reach the unit's least volts, and a wake line its level, in at least one listed condition in which
 * the car stands whole. A ground is measured over loom and metal. A unit that nothing is wired to is not fitted.
 */
export const unitPower: Rule = {
	id,
	title: "Every control unit has its supply, its ground and its wake line",
	source: `least volts of the unit; ground up to ${MOST_GROUND_OHMS} ohm: common practice, no source`,
	check(circuit) {
		const units = [...circuit.loom.parts.values()].filter((part) => part.kind === "control unit");
		return units.flatMap((unit) => {
			const pins = contactsOfPart(circuit.loom, unit.id);
			if (pins.every((pin) => wiresAtContact(circuit.loom, pin.id).length === 0)) return [];
			return pins.flatMap((pin) => checkPin(circuit, unit, pin) ?? []);
		});
	},
};

function checkPin(circuit: Circuit, unit: Part, pin: Contact): Finding | undefined {
	if (pin.role === "ground") {
		const ohms = earthOhms(circuit, pin.id);
		if (ohms <= MOST_GROUND_OHMS) return undefined;
		const what = Number.isNaN(ohms)
			? "nothing leads to the battery's minus"
			: `${amount(ohms, "ohm")} to the battery's minus`;
		return report(
			circuit,
			unit,
			pin,
			`${what}; at most ${MOST_GROUND_OHMS} ohm are right`,
			"Run it to a ground point of the car.",
		);
	}
	if (pin.role !== "supply" && pin.role !== "wake") return undefined;
	const least =
		(pin.role === "wake" ? pinSetting(circuit, pin, "volts") : unit.values.min_volts) ?? MIN_VOLTS;
	const inside = circuit.node(insideNode(unit.id, "ground"))!;
	const conditions = wholeConditions(circuit);
	if (conditions.length === 0) return undefined;
	const most = Math.max(
		...conditions.map(({ point }) => pinVolts(point, pin.id) - voltsAt(point.volts, inside)),
	);
	if (most >= least) return undefined;
	return report(
		circuit,
		unit,
		pin,
		`at most ${amount(Math.max(0, most), "V")} in any listed condition; ${amount(least, "V")} are needed`,
		pin.role === "wake"
			? "Give it the switched feed it had, or another of the same terminal."
			: "Give it the fused feed it had.",
	);
}

function report(circuit: Circuit, unit: Part, pin: Contact, what: string, mend: string): Finding {
	const ways = reach(circuit, [pinOf(circuit, pin)], (k) => isLoom(circuit, k) && isThere(circuit, k));
	return finding(circuit, id, "stop", {
		where: `${partText(circuit.loom, unit.id)}: ${pin.role} ${contactText(circuit.loom, pin.id)}`,
		why: `It has ${what}. The unit does not work, or not rightly.`,
		mend,
		path: [...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!)).toReversed(), pin.id, unit.id],
	});
}
