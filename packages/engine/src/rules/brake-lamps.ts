/** The brake lamps must light with the pedal pressed, and only then. */
import { checkSwitchedLamps } from "./support/switched-lamps.js";
import type { Rule } from "./types.js";

const id = "brake-lamps";

/** Pressed is the position `pressed` or `down` of every brake switch. */
export const brakeLamps: Rule = {
	id,
	title: "Brake lamps light with the pedal pressed only",
	source: "80 % of the battery's volts and half the rated power: common practice, no source",
	check: (circuit) =>
		checkSwitchedLamps(circuit, {
			rule: id,
			lamps: "brake lamp",
			duties: ["brake switch"],
			meaning: "pressed",
		}),
};
