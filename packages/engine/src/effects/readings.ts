/** Which readings a change moves by more than a meter tells. */
import { type Circuit, type Operating, pinNode, separated, voltsAt } from "../circuit/index.js";
import { meterError, WORKSHOP_METER } from "../readings/index.js";
import { wholeConditions } from "../rules/support/points.js";

/** Volts of a part's pin against the battery's minus, in the condition in which they moved most. */
export interface ReadingChange {
	readonly contact: string;
	readonly condition: string;
	/** Undefined: the meter shows open. */
	readonly before: number | undefined;
	readonly after: number | undefined;
	/** Number of listed conditions in which this reading moved. */
	readonly conditions: number;
}

/** Contacts and whole conditions that both have; those that become or cease to be open first, then by how far they moved. */
export function changedReadings(before: Circuit, after: Circuit): ReadingChange[] {
	const found = new Map<string, ReadingChange>();
	const points = new Map(wholeConditions(after).map(({ condition, point }) => [condition, point]));
	for (const { condition, point } of wholeConditions(before)) {
		const now = points.get(condition);
		if (now === undefined) continue;
		for (const contact of before.loom.contacts.keys()) {
			if (!after.loom.contacts.has(contact)) continue;
			const [was, is] = [reading(point, contact), reading(now, contact)];
			if (!moved(was, is)) continue;
			const known = found.get(contact);
			const next = { contact, condition, before: was, after: is, conditions: (known?.conditions ?? 0) + 1 };
			found.set(contact, known && far(known) >= far(next) ? { ...known, conditions: next.conditions } : next);
		}
	}
	return [...found.values()].sort((x, y) => far(y) - far(x));
}

function reading(point: Operating, contact: string): number | undefined {
	const { circuit, volts } = point;
	const minus = minusOf(circuit);
	const node = circuit.node(pinNode(contact)) ?? circuit.node(contact)!;
	return separated(point, node, minus) ? undefined : voltsAt(volts, node) - voltsAt(volts, minus);
}

const minuses = new WeakMap<Circuit, number>();

/** Node of the battery's minus; the body where there is no battery. */
function minusOf(circuit: Circuit): number {
	let node = minuses.get(circuit);
	if (node === undefined) {
		const { contacts, parts } = circuit.loom;
		const minus = [...contacts.values()].find(
			(pin) => pin.role === "-" && parts.get(pin.part)?.kind === "battery",
		);
		node = (minus && circuit.node(pinNode(minus.id))) ?? -1;
		minuses.set(circuit, node);
	}
	return node;
}

function moved(was: number | undefined, is: number | undefined): boolean {
	if (was === undefined || is === undefined) return was !== is;
	return Math.abs(is - was) > meterError(WORKSHOP_METER, "volts", was);
}

const far = ({ before, after }: ReadingChange): number =>
	before === undefined || after === undefined ? Number.POSITIVE_INFINITY : Math.abs(after - before);
