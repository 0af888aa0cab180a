/** What was off as delivered must be off as converted, in the same condition. */
import { type Circuit, voltsAt } from "../circuit/index.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { namesAlong } from "./support/ways.js";
import { amount, partText } from "./support/words.js";
import { type Compared, gainedLoads } from "./support/worked.js";
import type { Finding, Rule } from "./types.js";

const id = "load-gained";

/** Loads that both cars have, in each condition in which both stand whole. */
export const loadGained: Rule = {
	id,
	title: "No load works where it did not as delivered",
	source: "off below 1 V, on above 2 V: common practice, no source",
	check(circuit, before) {
		return before === undefined ? [] : gainedLoads(circuit, before).map((one) => report(circuit, one));
	},
};

function report(circuit: Circuit, { load, condition, now }: Compared): Finding {
	const { a, b } = circuit.branches[load.branch]!;
	const plus = voltsAt(now.point.volts, a) > voltsAt(now.point.volts, b) ? a : b;
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, load.part.id)}${load.element && `, ${load.element}`}`,
		why: `In '${condition}' it was off as delivered and has ${amount(now.volts, "V")} now.`,
		mend: "Find on the way shown what feeds it, and part it from there.",
		path: [...namesAlong(circuit, upstream(now.point, plus).branches.toReversed()), load.part.id],
	});
}
