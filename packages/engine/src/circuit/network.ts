/**
 * Collects the network of a loom as it stands in one condition.
 *
 * Which branches there are never depends on the condition, only what they are: an open switch is a branch of
 * 0 S. So one loom has one pattern and one symbolic analysis.
 */
import type { AutomatonSpec, BranchSpec, NetworkBuilder } from "../devices/index.js";
import { deviceKinds, deviceView } from "../devices/index.js";
import type { Contact, Joint, Loom, Part, Wire, WireEnd } from "../loom/index.js";
import { type SpreadOhms, wireOhms } from "../units/index.js";
import * as R from "./contact-resistances.js";
import { BODY, ENGINE_METAL, insideNode, jointNode, pinNode, terminalNode, wireEndNode } from "./names.js";

export interface Network {
	readonly branches: readonly BranchSpec[];
	readonly automata: readonly AutomatonSpec[];
	readonly placeOf: ReadonlyMap<string, PartPlace>;
}

/** Where a part stands in a network: numbers of its first branch and automaton, and how many branches it has. */
export interface PartPlace {
	readonly branch: number;
	readonly branches: number;
	readonly automaton: number;
}

/** Kinds whose contacts are bolted when no connector is named. */
const BOLTED_KINDS: ReadonlySet<string> = new Set(["battery", "generator", "starter"]);

/** Temperature of the wires in degrees C when none is given. */
const AMBIENT = 20;

/** A link of no length still has the length of its terminals. */
const LEAST_OHMS = 1e-6;

/** Ohms of a wire end to end, without its terminals, at its conductor's temperature. */
export function conductorOhms(wire: Wire, celsius: number): SpreadOhms {
	const { ohms, spread } = wireOhms({ mm2: wire.mm2, metres: wire.metres, celsius });
	return { ohms: Math.max(ohms, LEAST_OHMS), spread };
}

/** Ids to which building is restricted. */
export interface Only {
	readonly parts: ReadonlySet<string>;
	readonly wires: ReadonlySet<string>;
	readonly joints: ReadonlySet<string>;
}

/**
 * @param settings the condition's settings with those it is like already merged
 * @param only build these alone, as they stand in the whole loom
 * @throws Error when a part's kind is not known (checkDevices tells where)
 */
export function buildNetwork(loom: Loom, settings: ReadonlyMap<string, string>, only?: Only): Network {
	const branches: BranchSpec[] = [];
	const automata: AutomatonSpec[] = [];
	const add = (spec: BranchSpec) => branches.push(spec) - 1;
	const placeOf = new Map<string, PartPlace>();
	for (const joint of loom.joints.values()) if (only?.joints.has(joint.id) !== false) addMetal(joint, add);
	for (const wire of loom.wires.values()) if (only?.wires.has(wire.id) !== false) addWire(loom, wire, add);
	const contactsOf = only?.parts.size === 0 ? NONE : contactsByPart(loom, only?.parts);
	for (const part of loom.parts.values()) {
		if (only?.parts.has(part.id) === false) continue;
		const [branch, automaton] = [branches.length, automata.length];
		buildPart(part, contactsOf.get(part.id) ?? [], settings, add, (spec) => automata.push(spec));
		placeOf.set(part.id, { branch, branches: branches.length - branch, automaton });
	}
	return { branches, automata, placeOf };
}

const NONE: ReadonlyMap<string, readonly Contact[]> = new Map();

/** Contacts of each part, or of those asked about, in table order. */
export function contactsByPart(loom: Loom, asked?: ReadonlySet<string>): Map<string, Contact[]> {
	const byPart = new Map<string, Contact[]>();
	for (const contact of loom.contacts.values()) {
		if (asked?.has(contact.part) === false) continue;
		const list = byPart.get(contact.part);
		if (list) list.push(contact);
		else byPart.set(contact.part, [contact]);
	}
	return byPart;
}

/**
 * One part with its mated contacts: as many branches and automata under any settings.
 * @param add takes a branch and returns its number
 */
export function buildPart(
	part: Part,
	contacts: readonly Contact[],
	settings: ReadonlyMap<string, string>,
	add: (spec: BranchSpec) => number,
	automaton: (spec: AutomatonSpec) => void,
): void {
	if (part.kind === "connector") addInline(part, contacts, settings, add);
	else for (const contact of contacts) addMated(part, contact, settings, add);
	const kind = deviceKinds.get(part.kind);
	if (kind === undefined) throw new Error(`${part.id}: kind '${part.kind}' is not known`);
	const builder: NetworkBuilder = { pin: pinNode, inside: insideNode, branch: add, automaton };
	kind.build(deviceView(kind, part, contacts, settings, pinNode), builder);
}

type Add = (spec: BranchSpec) => number;

function addMetal(joint: Joint, add: Add): void {
	if (joint.kind !== "ground") return;
	add({
		a: jointNode(joint.id),
		b: joint.metal === "engine" ? ENGINE_METAL : BODY,
		siemens: 1 / R.BOLT_TO_METAL.ohms,
		spread: R.BOLT_TO_METAL.spread,
		owner: { what: "metal", id: joint.id, element: "bolt" },
	});
}

function addWire(loom: Loom, wire: Wire, add: Add): void {
	const conductor = conductorOhms(wire, AMBIENT);
	add({
		a: wireEndNode(wire.id, "from"),
		b: wireEndNode(wire.id, "to"),
		siemens: 1 / conductor.ohms,
		spread: conductor.spread / 2,
		owner: { what: "wire", id: wire.id, element: "conductor" },
	});
	addEnd(loom, wire, "from", wire.from, add);
	addEnd(loom, wire, "to", wire.to, add);
}

function addEnd(loom: Loom, wire: Wire, side: "from" | "to", end: WireEnd, add: Add): void {
	if (end.at === "loose") return;
	const a = wireEndNode(wire.id, side);
	if (end.at === "contact") {
		const crimp = wire.mm2 >= R.HEAVY_MM2 ? R.HEAVY_CRIMP : R.CRIMP;
		add({
			a,
			b: terminalNode(end.contact),
			siemens: 1 / crimp.ohms,
			spread: crimp.spread,
			owner: { what: "crimp", id: end.contact, element: wire.id },
		});
		return;
	}
	const joint = loom.joints.get(end.joint);
	const usual = joint?.kind === "ground" ? R.RING : joint?.kind === "bar" ? R.BAR : R.SPLICE;
	add({
		a,
		b: jointNode(end.joint),
		siemens: 1 / (joint?.ohms || usual.ohms),
		spread: usual.spread,
		owner: { what: "joint", id: end.joint, element: wire.id },
	});
}

function addMated(part: Part, contact: Contact, settings: ReadonlyMap<string, string>, add: Add): void {
	const housing = contact.connector;
	const out = housing !== "" ? settings.get(housing) === "unmated" : settings.get(part.id) === "pulled";
	const kind = housing !== "" ? R.MATED : BOLTED_KINDS.has(part.kind) ? R.BOLTED : R.BLADE;
	add({
		a: terminalNode(contact.id),
		b: pinNode(contact.id),
		siemens: out ? 0 : 1 / kind.ohms,
		spread: kind.spread,
		owner: { what: "mated contact", id: contact.id, element: housing },
	});
}

/** Loom-to-loom connector: the two halves of a cavity are joined to each other. */
function addInline(
	part: Part,
	contacts: readonly Contact[],
	settings: ReadonlyMap<string, string>,
	add: Add,
): void {
	const out = settings.get(part.id) === "unmated";
	const other = new Map(contacts.filter((c) => c.role === "b").map((c) => [c.cavity, c]));
	for (const contact of contacts) {
		const mate = contact.role === "a" ? other.get(contact.cavity) : undefined;
		if (mate === undefined) continue;
		add({
			a: terminalNode(contact.id),
			b: terminalNode(mate.id),
			siemens: out ? 0 : 1 / R.MATED.ohms,
			spread: R.MATED.spread,
			owner: { what: "mated contact", id: contact.id, element: part.id },
		});
	}
}
