/** Circuits that need little: joined as delivered, or a link in a plug. */
import type { Access, SideOf } from "./access.js";
import { NOTHING } from "./costs.js";
import { newWireName, step } from "./leg.js";
import { netsOf } from "./sides.js";
import { isRestraint, type Situation } from "./situation.js";
import type { Option, Price, Step, WantedCircuit } from "./types.js";

/** The two sides are joined already, by wires large enough. */
export function reused(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	points: readonly Access[],
): Option[] {
	if (from.at !== "contact") return [];
	const net = at.nets.ofContact(from.contact);
	const there = net !== undefined && netsOf(at, to).includes(net);
	if (!there || net === undefined) return [];
	const least = Math.min(...net.wires.map(({ mm2 }) => mm2));
	if (least < circuit.mm2) return [];
	const bars = [...new Set(points.flatMap((point) => [...point.bars, ...point.needs]))];
	const rest = {
		steps: [],
		own: NOTHING,
		shared: new Map(),
		uses: [],
		needs: [],
		bars,
		joints: 0,
		allNew: false,
		lies: "",
	};
	return [{ circuit: circuit.target, way: "reuse", text: "joined as delivered", ...rest }];
}

/** A link between two contacts of one housing, where one has a wire: its terminal takes the link as well, which counts as a joint. */
export function bridged(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	price: (steps: readonly Step[]) => { own: Price; shared: Map<string, Price> },
): Option[] {
	if (from.at !== "contact" || to.at !== "contact") return [];
	const [a, b] = [from.contact, to.contact];
	const housing = at.places.contact(a)?.connector;
	if (circuit.mostJoints === 0) return [];
	const wired = [a, b].map((id) => (at.nets.ofContact(id)?.wires.length ?? 0) > 0);
	if (!housing || at.places.contact(b)?.connector !== housing || wired[0] === wired[1]) return [];
	if (at.nets.isInLine(a) || isRestraint(at, a)) return [];
	const { mm2, colours, target, pair } = circuit;
	const place = at.places.ofContact(a);
	const link = {
		from: a,
		to: b,
		fresh: newWireName(target, 0),
		mm2,
		colours,
		metres: 0.1,
		place,
		circuit: target,
		pair,
	};
	const words = `link from ${a} to ${b} in the plug`;
	const steps = [step("bridge", `${circuit.title || target}: ${words}`, link)];
	const rest = { needs: [], bars: [], joints: 1, allNew: true, lies: pair === "" ? "" : "bridge" };
	const uses = [`cavity ${wired[0] ? b : a}`];
	return [
		{
			circuit: target,
			way: "new",
			text: words,
			steps,
			...price(steps),
			uses,
			...rest,
		},
	];
}
