/**
 * Things to do rather than to measure: reseat and lock a connector, press a relay or fuse home, wiggle a plug while
 * watching, let a relay change places with one of its kind.
 *
 * The outcome is what is seen next time. Chances of it and minutes: common practice, no source.
 */

import { partWords } from "../faults/index.js";
import type { Loom, Part } from "../loom/index.js";
import { forbiddenWork } from "../readings/index.js";
import { entropy } from "./entropy.js";
import type { ActionKind, NextAction } from "./types.js";
import type { Weighed } from "./weighing.js";

/** How a fault stands to a part: shaken by its reseating, the device itself, in one of its contacts, or elsewhere. */
type Relation = "shaken" | "device" | "inside" | "elsewhere";

/**
 * Chance of each outcome by where the fault really is. Of reseating and wiggling: what is seen changes, or not. Of a
 * swap: the fault goes with the relay, it is gone, or it stays.
 */
const CHANCES: Readonly<Record<ActionKind, Readonly<Record<Relation, readonly number[]>>>> = {
	reseat: { shaken: [0.85, 0.15], device: [0.02, 0.98], inside: [0.3, 0.7], elsewhere: [0.02, 0.98] },
	wiggle: { shaken: [0.7, 0.3], device: [0.02, 0.98], inside: [0.25, 0.75], elsewhere: [0.02, 0.98] },
	swap: {
		shaken: [0.02, 0.85, 0.13],
		device: [0.9, 0.02, 0.08],
		inside: [0.02, 0.3, 0.68],
		elsewhere: [0.02, 0.02, 0.96],
	},
};
const MINUTES: Readonly<Record<ActionKind, number>> = { reseat: 3, wiggle: 2, swap: 4 };
/** Below so many bits it is not worth the walk, unless the cause itself is this likely: then it mends. */
const LEAST_BITS = 0.02;
const LIKELY = 0.2;
const MOST = 3;

/** Actions worth taking: those that would mend a likely cause first, then the most telling per minute. */
export function rateActions(loom: Loom, leading: readonly Weighed[]): NextAction[] {
	const mass = leading.reduce((sum, w) => sum + w.posterior, 0);
	const shaken = leading.flatMap((w) => (w.fault?.shakenBy ? [w.fault.shakenBy] : []));
	const devices = leading.flatMap((w) => w.fault?.inParts ?? []);
	// Restraint plugs are reseated by the maker's procedure, not by a hint from here.
	const allowed = (part: string) => forbiddenWork(loom, [part]) === undefined;
	const likely = new Set(leading.filter((w) => w.posterior > LIKELY).map((w) => w.fault?.shakenBy ?? ""));
	const make = (kind: ActionKind, part: string, twin?: Part): NextAction => ({
		...{ kind, part, ...said(loom, kind, part, twin) },
		bits: information(loom, kind, part, leading, mass),
		minutes: MINUTES[kind] + (loom.parts.get(part)?.reachMinutes ?? 0),
		place: loom.parts.get(part)?.place ?? "",
	});
	// Wiggling tells nearly as much in less time, but mends nothing.
	const wiggled = (part: string) => !likely.has(part) && loom.parts.get(part)?.kind === "connector";
	const seats = [...new Set(shaken.filter(allowed))].map((part) =>
		make(wiggled(part) ? "wiggle" : "reseat", part),
	);
	const swaps = [...new Set(devices.filter(allowed))].flatMap((part) => {
		const twin = twinOf(loom, part, allowed);
		return twin ? [make("swap", part, twin)] : [];
	});
	const mends = ({ kind, part }: NextAction) => Number(kind !== "swap" && likely.has(part));
	return [...seats, ...swaps]
		.filter((action) => action.bits > LEAST_BITS || mends(action) > 0)
		.sort((x, y) => mends(y) - mends(x) || y.bits / y.minutes - x.bits / x.minutes)
		.slice(0, MOST);
}

/** Another relay on the car with the same contacts and values, rather one at the same place. */
function twinOf(loom: Loom, id: string, allowed: (part: string) => boolean): Part | undefined {
	const part = loom.parts.get(id);
	if (part?.kind !== "relay") return undefined;
	const roles = (of: string) =>
		[...loom.contacts.values()]
			.filter((contact) => contact.part === of)
			.map(({ role }) => role)
			.sort()
			.join();
	const own = roles(id);
	const values = JSON.stringify(part.values);
	const twins = [...loom.parts.values()].filter(
		(other) =>
			other.id !== id &&
			other.kind === "relay" &&
			JSON.stringify(other.values) === values &&
			roles(other.id) === own &&
			allowed(other.id),
	);
	return twins.find(({ place }) => place === part.place) ?? twins[0];
}

function said(
	loom: Loom,
	kind: ActionKind,
	part: string,
	twin: Part | undefined,
): Pick<NextAction, "text" | "because"> {
	const what = partWords(loom, part);
	if (kind === "swap")
		return {
			text: `Let ${what} and ${partWords(loom, twin!.id)} change places, key off`,
			because:
				"if the fault goes with it, the relay is bad; if it is gone, it was not seated; if it stays, look elsewhere. Put both back",
		};
	if (kind === "wiggle")
		return {
			text: `Wiggle ${what} and its loom while somebody watches, without pulling it`,
			because:
				"if what is seen comes or goes with it, the bad contact is there; if not, the fault lies elsewhere",
		};
	const plug = loom.parts.get(part)?.kind === "connector";
	return {
		text: plug ? `Battery off, pull ${what}, push it home and lock it` : `Pull ${what} and press it home`,
		because: `if the codes or readings change afterwards, ${plug ? "its lock was open" : "it was not seated"}; if not, the fault lies elsewhere`,
	};
}

function information(
	loom: Loom,
	kind: ActionKind,
	part: string,
	leading: readonly Weighed[],
	mass: number,
): number {
	const mixed = CHANCES[kind].elsewhere.map(() => 0);
	let remaining = 0;
	for (const { fault, posterior } of leading) {
		const chances = CHANCES[kind][relation(loom, part, fault)];
		chances.forEach((chance, k) => {
			mixed[k]! += (posterior / mass) * chance;
		});
		remaining += (posterior / mass) * entropy(chances);
	}
	return Math.max(0, entropy(mixed) - remaining);
}

function relation(loom: Loom, part: string, fault: Weighed["fault"]): Relation {
	if (fault?.shakenBy === part) return "shaken";
	if (fault?.inParts.includes(part)) return "device";
	const inside = fault?.path.some((id) => {
		const contact = loom.contacts.get(id);
		return contact !== undefined && (contact.connector === part || contact.part === part);
	});
	return inside ? "inside" : "elsewhere";
}
