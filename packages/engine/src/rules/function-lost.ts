/** Every function that the car must have works on a sound car. */
import { type Circuit, pinNode } from "../circuit/index.js";
import type { FunctionNeed } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { conditionsOf, type Settled } from "./support/points.js";
import { quantityValue } from "./support/quantities.js";
import { namesAlong } from "./support/ways.js";
import { amount, contactText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "function-lost";

interface Lost {
	readonly need: FunctionNeed;
	readonly at: Settled;
	/** Undefined: nothing joins the two points. */
	readonly value: number | undefined;
}

/** One finding a function: its first need that does not hold. A condition that does not settle is another rule's. */
export const functionLost: Rule = {
	id,
	title: "Every function of the car works",
	source: "functions.csv",
	check(circuit) {
		const lost = new Map<string, Lost[]>();
		for (const need of circuit.loom.functions) {
			const found = judge(circuit, need);
			if (found) lost.set(need.function, [...(lost.get(need.function) ?? []), found]);
		}
		return [...lost.values()].map((all) => report(circuit, all));
	},
};

function judge(circuit: Circuit, need: FunctionNeed): Lost | undefined {
	const at = conditionsOf(circuit).settled.find(({ condition }) => condition === need.when);
	if (at === undefined) return undefined;
	const value = quantityValue(at.point, need, "");
	const open = value === undefined || Number.isNaN(value);
	// Between points that nothing joins there is no volt and no ampere.
	const seen = open ? 0 : value;
	const holds =
		(need.low === undefined || seen >= need.low) && (need.high === undefined || seen <= need.high);
	return holds ? undefined : { need, at, value: open ? undefined : value };
}

function report(circuit: Circuit, all: readonly Lost[]): Finding {
	const [{ need, at, value }] = all as [Lost];
	const unit = need.measures === "amps" ? "A" : "V";
	const title =
		circuit.loom.functions.find((row) => row.function === need.function && row.title)?.title ?? "";
	const wanted = [
		need.low === undefined ? "" : `at least ${need.low} ${unit}`,
		need.high === undefined ? "" : `at most ${need.high} ${unit}`,
	].filter(Boolean);
	const node = circuit.node(pinNode(need.contact.replace(/!pin$/, "")));
	const fed = node === undefined ? [] : namesAlong(circuit, upstream(at.point, node).branches.toReversed());
	const more = all.length > 1 ? ` ${all.length - 1} more of its needs fail.` : "";
	return finding(circuit, id, need.high !== undefined && value !== undefined ? "stop" : "warn", {
		where: `${need.function}${title && `, ${title}`}: ${contactText(circuit.loom, need.contact)}`,
		why: `In '${need.when}' it has ${value === undefined ? "no connection" : amount(value, unit)}${need.reference && ` to ${need.reference}`}; ${wanted.join(" and ")} is needed.${more}`,
		mend: "Follow the way shown from the supply, or the wire from the contact, and find the gap or what is joined wrongly.",
		path: [...fed, need.contact.replace(/!pin$/, "")],
	});
}
