import type { Contact, Wire, WireEnd } from "../../loom/index.js";
import { connectorOf } from "../draft.js";
import { endText, isStowed, looseSides } from "../wire-ends.js";
import { type Change, type ChangeKind, change } from "./change.js";
import { type Joined, joinedKey, joinedText, other, type Places, wireKey } from "./joined.js";

type Pair = readonly [before: Joined | undefined, after: Joined | undefined];

/** The changes at one contact: for each wire there that is not the same, what was and what is. */
export function contactWireChanges(a: Places, b: Places, contact: Contact): Change[] {
	const home = b.loom.contacts.has(contact.id) ? b.loom : a.loom;
	const where = {
		connector: connectorOf(home, contact),
		cavity: contact.cavity,
		contact: contact.id,
		part: contact.part,
	};
	return pairUp(a.atContact(contact.id), b.atContact(contact.id)).map(([before, after]) =>
		change(
			kindOf(a, b, before, after),
			`${contact.id}: ${wasIs(before, after)}${whereabouts(a, b, before, after)}`,
			{
				...where,
				wire: (after ?? before)?.wire.id ?? "",
				before,
				after,
			},
		),
	);
}

/** The changes of wires that are crimped to no contact in either loom. */
export function looseWireChanges(a: Places, b: Places): Change[] {
	const ids = new Set([...a.loom.wires.keys(), ...b.loom.wires.keys()]);
	return [...ids].flatMap((id) => {
		const wires = [a, b].map((places) => ({ places, wire: places.loom.wires.get(id) }));
		if (wires.some(({ wire }) => wire?.from.at === "contact" || wire?.to.at === "contact")) return [];
		const [before, after] = wires.map(({ places, wire }) => wire && places.joined(wire, "from"));
		if (before && after && spanKey(before) === spanKey(after)) return [];
		const span = (joined: Joined) => `${joinedText(joined)} from ${endText(joined.wire.from)}`;
		return change(kindOfSpan(before?.wire, after?.wire), `${id}: ${wasIs(before, after, span)}`, {
			wire: id,
			before,
			after,
		});
	});
}

function kindOfSpan(before: Wire | undefined, after: Wire | undefined): ChangeKind {
	if (!before || !after) return before ? "wire removed" : "wire added";
	const looser = looseSides(after).length - looseSides(before).length;
	if (looser !== 0) return looser > 0 ? "now ends loose" : "now connected";
	const stowed = ({ from, to }: Wire) => [from, to].filter(isStowed).length;
	if (stowed(after) !== stowed(before))
		return stowed(after) > stowed(before) ? "now stowed" : "now ends loose";
	if (endsKey(before) !== endsKey(after)) return "leads elsewhere";
	if (before.metres !== after.metres)
		return after.metres > before.metres ? "wire lengthened" : "wire shortened";
	return "wire changed";
}

/** Both ends count, whichever is called `from`; what lies beyond splices is told at the contacts there. */
function spanKey({ wire }: Joined): string {
	const { from: _from, to: _to, ...rest } = wire;
	return JSON.stringify([Object.entries(rest).sort(), endsKey(wire)]);
}

const endsKey = ({ from, to }: Wire): string => [endText(from), endText(to)].sort().join("\n");

/** Leaves out what is the same, then pairs what is left: first by wire, then as it stands. */
function pairUp(before: readonly Joined[], after: readonly Joined[]): Pair[] {
	const left = [...after];
	const take = (fits: (joined: Joined) => boolean): Joined | undefined => {
		const at = left.findIndex(fits);
		return at < 0 ? undefined : left.splice(at, 1)[0];
	};
	const changed = before.filter((was) => !take((is) => joinedKey(is) === joinedKey(was)));
	const pairs: Pair[] = changed.map((was) => [was, take((is) => is.wire.id === was.wire.id)]);
	const filled = pairs.map(([was, is]): Pair => [was, is ?? left.shift()]);
	return [...filled, ...left.map((is): Pair => [undefined, is])];
}

function kindOf(a: Places, b: Places, before: Joined | undefined, after: Joined | undefined): ChangeKind {
	if (before && after) return kindOfPair(before, after);
	if (before) {
		const now = b.loom.wires.get(before.wire.id);
		if (!now) return "wire removed";
		return counterpart(before, now).at === "loose" ? "wire taken off" : "wire moved";
	}
	if (!after) throw new Error("a change needs a before or an after");
	const was = a.loom.wires.get(after.wire.id);
	if (!was) return "wire added";
	return counterpart(after, was).at === "loose" ? "loose end fitted" : "wire moved";
}

/** Where this end of a wire is in the other loom: not where its far end stayed, whichever is called `from` there. */
function counterpart({ far, side }: Joined, inOther: Wire): WireEnd {
	const stayed = (["from", "to"] as const).find((at) => endText(inOther[at]) === endText(far));
	return inOther[stayed ? other(stayed) : side];
}

function kindOfPair(before: Joined, after: Joined): ChangeKind {
	const looseBefore = before.reaches.every((reach) => reach.loose);
	const looseAfter = after.reaches.every((reach) => reach.loose);
	if (looseAfter && !looseBefore) return "now ends loose";
	if (looseBefore && !looseAfter) return "now connected";
	if (looseBefore && looseAfter && isStowed(before.far) !== isStowed(after.far))
		return isStowed(after.far) ? "now stowed" : "now ends loose";
	if (wireKey(before) === wireKey(after)) return "differs beyond a splice";
	const places = ({ reaches }: Joined) => JSON.stringify(reaches.map((reach) => reach.place));
	const samePlaces = places(before) === places(after);
	const longer = totalMetres(after) - totalMetres(before);
	if (samePlaces && longer > 1e-6) return "wire lengthened";
	const splices = ({ reaches }: Joined) => new Set(reaches.flatMap((reach) => reach.splices));
	const known = splices(before);
	if ([...splices(after)].some((splice) => !known.has(splice))) return "spliced";
	if (samePlaces && longer < -1e-6) return "wire shortened";
	if (before.wire.id !== after.wire.id) return "wire replaced";
	return samePlaces && endText(before.far) === endText(after.far) ? "wire changed" : "leads elsewhere";
}

const totalMetres = ({ reaches }: Joined): number => reaches.reduce((sum, reach) => sum + reach.metres, 0);

function wasIs(before: Joined | undefined, after: Joined | undefined, words = joinedText): string {
	if (before && after) return `was ${words(before)}, now ${words(after)}`;
	return before ? `no longer ${words(before)}` : `now ${words(after!)}`;
}

/** Of a wire that came or went: where that end of it is, or was, in the other loom. */
function whereabouts(a: Places, b: Places, before: Joined | undefined, after: Joined | undefined): string {
	if (before && after) return "";
	const here = (before ?? after)!;
	const inOther = (before ? b : a).loom.wires.get(here.wire.id);
	if (!inOther) return "";
	const end = counterpart(here, inOther);
	return `; that end ${before ? "is" : "was"} ${end.at === "loose" ? endText(end) : `at ${endText(end)}`}`;
}
