/** No output of a control unit may be asked for more than it is made for. */
import type { BranchChange, Circuit } from "../circuit/index.js";
import { isLimited } from "../devices/index.js";
import { type Contact, contactsOfPart } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { downstream, upstream } from "./support/flow.js";
import { changed, type Settled, wholeConditions } from "./support/points.js";
import { ampsInto, pinSetting } from "./support/unit-pins.js";
import { namesAlong } from "./support/ways.js";
import { amount, contactText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "driver-over-limit";

/** Low-side and high-side drivers and sensor supplies, in every listed condition in which the car stands whole. */
export const driverOverLimit: Rule = {
	id,
	title: "No output of a control unit carries more than its limit",
	source: "`limit_amps` of the pin: the unit's own figure",
	check(circuit) {
		const units = [...circuit.loom.parts.values()].filter((part) => part.kind === "control unit");
		return units
			.flatMap((unit) => contactsOfPart(circuit.loom, unit.id))
			.flatMap((pin) => checkPin(circuit, pin) ?? []);
	},
};

/** The output held as it is below its limit, where it went over it; undefined where it did not. */
function held({ point }: Settled, pin: Contact): BranchChange | undefined {
	const { automata } = point.standing;
	const at = automata.findIndex(
		({ spec }) => spec.part === pin.part && spec.element.startsWith(`${pin.id} `),
	);
	const automaton = automata[at];
	if (automaton === undefined || !isLimited(automaton.spec, point.states[at]!)) return undefined;
	return { branch: automaton.branches[0]!, ...automaton.spec.table[WORKING]![0]! };
}

/** State of an output that works within its limit. */
const WORKING = 2;

function checkPin(circuit: Circuit, pin: Contact): Finding | undefined {
	const most = pinSetting(circuit, pin, "limit_amps");
	if (most === undefined) return undefined;
	let worst: { at: Settled; amps: number } | undefined;
	for (const at of wholeConditions(circuit)) {
		const change = held(at, pin);
		const point = change && changed(at.point, [change]);
		if (point === undefined) continue;
		const amps = ampsInto(point, pin.id);
		if (Math.abs(amps) > Math.abs(worst?.amps ?? 0)) worst = { at: { ...at, point }, amps };
	}
	if (worst === undefined) return undefined;
	const { at, amps } = worst;
	const node = pinOf(circuit, pin);
	const load =
		amps > 0 ? upstream(at.point, node).branches.toReversed() : downstream(at.point, node).branches;
	return finding(circuit, id, "warn", {
		where: `${contactText(circuit.loom, pin.id)}, ${pin.role}`,
		why: `It would carry ${amount(Math.abs(amps), "A")} in '${at.condition}'; it is made for ${amount(most, "A")}. It switches itself off or burns out.`,
		mend: "Let it switch a relay and the relay the load, or take load off it.",
		path: amps > 0 ? [...namesAlong(circuit, load), pin.part] : [pin.part, ...namesAlong(circuit, load)],
	});
}
