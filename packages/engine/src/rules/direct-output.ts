/** An output must have a load between it and the supply or ground that it does not switch to itself. */
import type { Circuit } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { feedPasses, pinOf, supplyPosts } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { groundNets, isLoom, isThere, netAt } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "direct-output";

/** To which side an output closes: the other one must not be joined to it without a load between. */
const CLOSES: Readonly<Record<string, readonly ("supply" | "ground")[]>> = {
	"low-side": ["ground"],
	"high-side": ["supply"],
	bridge: ["ground", "supply"],
};

/** Over the loom, fuses and contacts, open or closed: no condition needs to drive the output. */
export const directOutput: Rule = {
	id,
	title: "No output is joined to the other side without a load",
	source: "a driver that closes there is a short circuit",
	check(circuit) {
		const posts = supplyPosts(circuit).map((post) => pinOf(circuit, post));
		const feeds = reach(circuit, posts, feedPasses(circuit, true));
		return [...circuit.loom.contacts.values()].flatMap((pin) => {
			const closes = CLOSES[pin.role];
			if (closes === undefined || circuit.loom.parts.get(pin.part)?.kind !== "control unit") return [];
			const found: Finding[] = [];
			if (closes.includes("ground") && feeds.has(pinOf(circuit, pin)))
				found.push(
					report(circuit, pin, "the battery's feed", namesAlong(circuit, feeds.wayTo(pinOf(circuit, pin)))),
				);
			if (closes.includes("supply") && groundNets(circuit).has(netAt(circuit, pin.id)))
				found.push(report(circuit, pin, "a ground of the car", toGround(circuit, pin)));
			return found;
		});
	},
};

function toGround(circuit: Circuit, pin: Contact): string[] {
	const ways = reach(circuit, [pinOf(circuit, pin)], (k) => isLoom(circuit, k) && isThere(circuit, k));
	const ground = [...circuit.loom.joints.values()].find(
		(joint) => joint.kind === "ground" && ways.has(circuit.node(joint.id) ?? -2),
	);
	return ground ? namesAlong(circuit, ways.wayTo(circuit.node(ground.id)!)) : [];
}

function report(circuit: Circuit, pin: Contact, what: string, way: readonly string[]): Finding {
	return finding(circuit, id, "stop", {
		where: `${contactText(circuit.loom, pin.id)}, ${pin.role}`,
		why: `It is joined to ${what} with no load between. When ${pin.part} switches it on it is a short circuit.`,
		mend: "Take it off there, and join it to the load that it switches.",
		path: [...way, pin.id, pin.part],
	});
}
