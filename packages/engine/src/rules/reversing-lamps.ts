/** The reversing lamps must light in reverse, and only there. */
import { checkSwitchedLamps } from "./support/switched-lamps.js";
import type { Rule } from "./types.js";

const id = "reversing-lamps";

/** Reverse is the position `reverse` or `R` of the reversing switch; of the selector where there is no such switch. */
export const reversingLamps: Rule = {
	id,
	title: "Reversing lamps light in reverse only",
	source: "80 % of the battery's volts and half the rated power: common practice, no source",
	check: (circuit) =>
		checkSwitchedLamps(circuit, {
			rule: id,
			lamps: "reversing lamp",
			duties: ["reversing switch", "selector"],
			meaning: "reverse",
		}),
};
