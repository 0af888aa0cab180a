/** The two sides of a wanted circuit, and the nets they lie on. */
import type { SideOf } from "./access.js";
import type { Net } from "./nets.js";
import type { Situation } from "./situation.js";
import type { WantedCircuit } from "./types.js";

/** One side of a circuit, or why there is none. */
export function sideOf(at: Situation, { from, to }: WantedCircuit, first: boolean): SideOf | string {
	if (first || to.at === "contact") {
		const contact = first ? from : to.at === "contact" ? to.name : "";
		return at.base.contacts.has(contact)
			? { at: "contact", contact }
			: `${contact} is not in the car once the parts of the targets have gone and come`;
	}
	if (to.at === "joint") return { at: "joint", joint: to.name };
	const ground = /^(?:(body|engine) )?ground$/.exec(to.at);
	if (ground) return { at: "ground", metal: ground[1] ?? "" };
	const { nets } = at;
	if (to.at === "function") {
		// Rows that ask for something to be there; those that ask for nothing say where it must not come.
		const needs = at.base.functions.filter((need) => need.function === to.name && need.low !== undefined);
		const found = new Set(needs.flatMap(({ contact }) => nets.ofContact(contact) ?? []));
		return found.size === 1
			? { at: "nets", nets: [...found] }
			: `the contacts of function ${to.name} lie on ${found.size} circuits; name one of its contacts`;
	}
	const contacts = to.at === "switched feed" ? at.switched : at.permanent;
	const found = new Set([...contacts].flatMap((id) => nets.ofContact(id) ?? []));
	return found.size > 0 ? { at: "nets", nets: [...found] } : `the car has no ${to.at} behind a fuse`;
}

export function netsOf(at: Situation, side: SideOf): readonly (Net | undefined)[] {
	if (side.at === "nets") return side.nets;
	if (side.at === "contact") return [at.nets.ofContact(side.contact)];
	if (side.at === "joint") return [at.nets.ofJoint(side.joint)];
	return at.nets.all.filter((net) => net.grounds.length > 0);
}
