/**
 * One cause for many contacts: a connector whose lock was left open, a relay not pressed home.
 *
 * Each contact is then good, poor or open by chance, and another throw comes each time it is reseated. The
 * chances of one, two or more contacts being out, and of poor against open: common practice, no source.
 */
import type { BranchChange, Circuit } from "../../circuit/index.js";
import type { Contact } from "../../loom/index.js";
import { POOR_OHMS } from "../patterns.js";
import { CHANCE, connectorHands } from "../rates.js";
import type { Fault, FaultContext, FaultKind, Pattern } from "../types.js";
import { partWords } from "../words.js";

/** Chances of: all contacts good at the moment, one out, two out, many out. */
const GOOD = 0.15;
const ONE = 0.45;
const TWO = 0.2;
const MANY = 0.2;
/**
 * Throws of the dice for two and for many, each, where the housing was worked on; a fixed sequence, so the same
 * loom gives the same answer. One that nobody touched is taken to have one bad contact at most.
 */
const THROWS = 6;

/** Marsaglia's xorshift32: a fixed sequence in [0, 1). G. Marsaglia, 'Xorshift RNGs', J. Stat. Softw. 8(14), 2003. */
function sequence(seed: number): () => number {
	let x = seed | 0 || 1;
	return () => {
		x ^= x << 13;
		x ^= x >>> 17;
		x ^= x << 5;
		return (x >>> 0) / 4294967296;
	};
}

/** Out of contact: open, or poor at one of the levels. */
function out(branch: number, random: () => number): BranchChange {
	if (random() < 0.6) return { branch, siemens: 0 };
	const level = POOR_OHMS[Math.floor(random() * POOR_OHMS.length)]!;
	return { branch, seriesOhms: level };
}

/** The ways the contacts of one housing can be out, weighted. */
export function loosePatterns(branches: readonly number[], seed: number, touched: boolean): Pattern[] {
	const n = branches.length;
	const random = sequence(seed);
	const patterns: Pattern[] = [{ weight: GOOD, change: { branches: [], added: [] } }];
	const add = (weight: number, changes: BranchChange[]) =>
		patterns.push({ weight, change: { branches: changes, added: [] } });
	const alone = n < 2 || !touched;
	const single = ONE + (alone ? TWO + MANY : 0);
	for (const branch of branches) {
		add((single * 0.6) / n, [{ branch, siemens: 0 }]);
		for (const ohms of POOR_OHMS) add((single * 0.4) / n / POOR_OHMS.length, [{ branch, seriesOhms: ohms }]);
	}
	if (alone) return patterns;
	for (let k = 0; k < THROWS; k++) {
		const first = Math.floor(random() * n);
		const second = (first + 1 + Math.floor(random() * (n - 1))) % n;
		add(TWO / THROWS, [out(branches[first]!, random), out(branches[second]!, random)]);
		const share = 0.15 + 0.6 * random();
		add(
			MANY / THROWS,
			branches.filter(() => random() < share).map((branch) => out(branch, random)),
		);
	}
	return patterns;
}

function matedBranches(circuit: Circuit, contacts: readonly Contact[]): number[] {
	return contacts
		.flatMap((contact) => circuit.branchesOf.get(contact.id) ?? [])
		.filter((k) => circuit.branches[k]!.owner.what === "mated contact");
}

/** Only contacts that carry a wire matter. */
function wired({ loom }: FaultContext): ReadonlySet<string> {
	const ends = [...loom.wires.values()].flatMap((wire) => [wire.from, wire.to]);
	return new Set(ends.flatMap((end) => (end.at === "contact" ? [end.contact] : [])));
}

export const notLocked: FaultKind = {
	kind: "connector not locked",
	title: "Connector not locked",
	source: "common practice, no source",
	list(context) {
		const { loom, circuit } = context;
		const live = wired(context);
		const contacts = [...loom.contacts.values()].filter((contact) => live.has(contact.id));
		return [...loom.parts.values()]
			.filter((part) => part.kind === "connector")
			.flatMap((part, index): Fault[] => {
				const held = contacts.filter((c) => c.connector === part.id || c.part === part.id);
				const branches = matedBranches(circuit, held);
				if (branches.length === 0) return [];
				return [
					{
						id: `connector not locked:${part.id}`,
						kind: "connector not locked",
						where: `${partWords(loom, part.id)}: lock left open`,
						place: part.place,
						prior: CHANCE.notLocked * connectorHands(context, part.id),
						patterns: loosePatterns(branches, 7919 * (index + 1), context.touched.connectors.has(part.id)),
						shakenBy: part.id,
						inParts: [],
						path: [part.id],
						mend: `battery off, push ${part.id} home, close its lock until it clicks, pull to see that it holds`,
					},
				];
			});
	},
};

export const notSeated: FaultKind = {
	kind: "relay not seated",
	title: "Relay or fuse not seated",
	source: "common practice, no source",
	list(context) {
		const { loom, circuit } = context;
		const live = wired(context);
		return [...loom.parts.values()]
			.filter((part) => part.kind === "relay" || part.kind === "fuse")
			.flatMap((part, index): Fault[] => {
				const blades = [...loom.contacts.values()].filter((c) => c.part === part.id && live.has(c.id));
				const branches = matedBranches(circuit, blades);
				if (branches.length === 0) return [];
				return [
					{
						id: `${part.kind} not seated:${part.id}`,
						kind: `${part.kind} not seated`,
						where: `${partWords(loom, part.id)}: not pressed home in its socket`,
						place: part.place,
						prior: CHANCE.notSeated * connectorHands(context, part.id),
						patterns: loosePatterns(branches, 104729 * (index + 1), true),
						shakenBy: part.id,
						inParts: [],
						path: [part.id, ...blades.map((c) => c.id)],
						mend: `pull ${part.id}, look at blades and socket, press it home until it stops`,
					},
				];
			});
	},
};
