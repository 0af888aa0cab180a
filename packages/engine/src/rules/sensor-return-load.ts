/** A sensor return carries sensor currents only; a load's current on it shifts every reading. */
import type { Circuit } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { ampsInto } from "./support/unit-pins.js";
import { namesAlong } from "./support/ways.js";
import { amount, contactText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "sensor-return-load";

/** Ten sensors of 8 mA each stay below it: common practice, no source. */
export const MOST_AMPS = 0.1;

/** Current in or out at each `sensor return` pin, in every listed condition in which the car stands whole. */
export const sensorReturnLoad: Rule = {
	id,
	title: "No load's current flows in a sensor return",
	source: `${MOST_AMPS * 1000} mA at a return pin: common practice, no source`,
	check(circuit) {
		const pins = [...circuit.loom.contacts.values()].filter(
			(pin) => pin.role === "sensor return" && circuit.loom.parts.get(pin.part)?.kind === "control unit",
		);
		return pins.flatMap((pin) => checkPin(circuit, pin) ?? []);
	},
};

function checkPin(circuit: Circuit, pin: Contact): Finding | undefined {
	let worst: { at: Settled; amps: number } | undefined;
	for (const at of wholeConditions(circuit)) {
		const amps = ampsInto(at.point, pin.id);
		if (Math.abs(amps) > Math.max(MOST_AMPS, Math.abs(worst?.amps ?? 0))) worst = { at, amps };
	}
	if (worst === undefined) return undefined;
	const { at, amps } = worst;
	const way = upstream(at.point, pinOf(circuit, pin)).branches.toReversed();
	return finding(circuit, id, "warn", {
		where: contactText(circuit.loom, pin.id),
		why:
			amps > 0
				? `A load's current of ${amount(amps, "A")} flows into it in '${at.condition}'. All sensors on this return read wrong by what the wire loses.`
				: `${amount(-amps, "A")} of the unit's own current leave by it in '${at.condition}': the return is joined to a ground of the car, or the unit's own ground is bad.`,
		mend:
			amps > 0
				? "Take the load off the return and give it a ground point."
				: "Part the return from the car's ground, and check the unit's ground pins.",
		path: [...namesAlong(circuit, way), pin.id, pin.part],
	});
}
