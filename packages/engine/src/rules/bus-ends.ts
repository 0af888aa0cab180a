/** A data bus must show its 60 ohm between high and low at every unit on it. */
import { type Circuit, pinNode, probeValue } from "../circuit/index.js";
import { type Contact, contactsOfPart, wiresAtContact } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere, netAt } from "./support/nets.js";
import { deadPoint } from "./support/points.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, list } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "bus-ends";

/** Two ends of 120 ohm side by side, 10 % either way for ends and meter. */
export const LOW_OHMS = 54;
export const HIGH_OHMS = 66;

/** A unit's bus pins, one of them wired at least. */
interface Stub {
	readonly high: Contact;
	readonly low: Contact;
	readonly ohms: number;
}

/** Measured as with a meter at each unit: all plugged in, battery off. */
export const busEnds: Rule = {
	id,
	title: "Each data bus shows 60 ohm between its lines",
	source: `120 ohm at each end, 60 ohm together: ISO 11898-2; ${LOW_OHMS} to ${HIGH_OHMS} ohm: common practice, no source`,
	check(circuit) {
		return busesOf(circuit).flatMap((stubs) => checkBus(circuit, stubs));
	},
};

/** Stubs that share a line belong to one bus. */
function busesOf(circuit: Circuit): Stub[][] {
	const buses: { nets: Set<number>; stubs: Stub[] }[] = [];
	for (const stub of stubsOf(circuit)) {
		const nets = [netAt(circuit, stub.high.id), netAt(circuit, stub.low.id)];
		const joined = buses.filter((bus) => nets.some((net) => bus.nets.has(net)));
		for (const bus of joined) buses.splice(buses.indexOf(bus), 1);
		buses.push({
			nets: new Set([...joined.flatMap((bus) => [...bus.nets]), ...nets]),
			stubs: [...joined.flatMap((bus) => bus.stubs), stub],
		});
	}
	return buses.map((bus) => bus.stubs);
}

function stubsOf(circuit: Circuit): Stub[] {
	const { loom } = circuit;
	const dead = deadPoint(circuit);
	const stubs: Stub[] = [];
	for (const part of loom.parts.values()) {
		if (part.kind !== "control unit") continue;
		const pins = contactsOfPart(loom, part.id);
		const wired = (contact: Contact) => wiresAtContact(loom, contact.id).length > 0;
		const lows = pins.filter((contact) => contact.role === "bus low");
		// A unit with several buses lists their pins in the same order.
		pins
			.filter((contact) => contact.role === "bus high")
			.forEach((high, k) => {
				const low = lows[k];
				if (low === undefined || !(wired(high) || wired(low))) return;
				const [a, b] = [high, low].map((contact) => circuit.node(pinNode(contact.id))!);
				stubs.push({ high, low, ohms: probeValue(dead, { kind: "ohms", a: a!, b: b! }) });
			});
	}
	return stubs;
}

function checkBus(circuit: Circuit, stubs: readonly Stub[]): Finding[] {
	const crossed = stubs.filter((stub) =>
		stubs.some((other) => netAt(circuit, other.high.id) === netAt(circuit, stub.low.id)),
	);
	if (crossed.length > 0) return [lines(circuit, stubs)];
	const off = stubs.filter(({ ohms }) => !(ohms >= LOW_OHMS && ohms <= HIGH_OHMS));
	if (off.length === 0) return [];
	// All alike: the bus itself. Some only: their own stubs.
	const alike = off.length === stubs.length && off.every(({ ohms }) => Math.abs(ohms - off[0]!.ohms) < 2);
	return (alike ? [off] : off.map((stub) => [stub])).map((group) => report(circuit, group, stubs));
}

function report(circuit: Circuit, group: readonly Stub[], stubs: readonly Stub[]): Finding {
	const [{ ohms, high, low }] = group as [Stub];
	const others = stubs.filter((stub) => !group.includes(stub));
	const ends = [...circuit.loom.parts.values()]
		.filter((part) => part.kind === "bus end")
		.map((part) => part.id);
	return finding(circuit, id, "stop", {
		where: list(group.map((stub) => `${contactText(circuit.loom, stub.high.id)} to ${stub.low.id}`)),
		why: `${Number.isNaN(ohms) ? "Nothing joins the two lines" : `${amount(ohms, "ohm")} lie between the lines`}; ${LOW_OHMS} to ${HIGH_OHMS} ohm are right. ${meaning(ohms)}`,
		mend:
			others.length > 0 && others.every((stub) => stub.ohms < HIGH_OHMS)
				? `The bus is right at ${list(others.map((stub) => stub.high.part))}: join ${high.part} to it.`
				: `A bus has one end of 120 ohm at each of its two ends, no more. Bus ends here: ${list(ends) || "none"}.`,
		path: [...lineOf(circuit, high), high.id, high.part, low.id, ...lineOf(circuit, low)],
	});
}

function meaning(ohms: number): string {
	if (ohms < 20) return "The lines touch each other or both touch the same metal.";
	if (ohms < LOW_OHMS) return "There is an end too many.";
	if (ohms < 132) return "One of the two ends is missing or not reached.";
	return "No end is reached from here: a line is open.";
}

function lines(circuit: Circuit, stubs: readonly Stub[]): Finding {
	return finding(circuit, id, "stop", {
		where: list(stubs.map((stub) => `${stub.high.id} and ${stub.low.id}`)),
		why: "High and low are joined or changed over at one of these units. Nothing on the bus can talk.",
		mend: "Join high to high and low to low. Change the two leads over where they are crossed.",
		path: stubs.flatMap((stub) => [stub.high.id, stub.low.id]),
	});
}

/** The longest run of a line from a unit. */
function lineOf(circuit: Circuit, contact: Contact): string[] {
	const start = circuit.node(pinNode(contact.id))!;
	const ways = reach(circuit, [start], (k) => isLoom(circuit, k) && isThere(circuit, k));
	return namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!));
}
