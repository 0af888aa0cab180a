/**
 * Things to do rather than to measure: reseat and lock a connector, press a relay or fuse home.
 *
 * The outcome is what is seen next time: changed (or gone), or the same. Chances of it: common practice, no source.
 */

import { partWords } from "../faults/index.js";
import type { Loom } from "../loom/index.js";
import { forbiddenWork } from "../readings/index.js";
import type { NextAction } from "./types.js";
import type { Weighed } from "./weighing.js";

/** Chance that what is seen changes, by the fault that is really there. */
const CHANGES = { shaken: 0.85, inside: 0.3, elsewhere: 0.02 } as const;
const MINUTES = 3;
/** Below so many bits it is not worth the walk, unless the cause itself is this likely: then it mends. */
const LEAST_BITS = 0.02;
const LIKELY = 0.2;
const MOST = 3;

/** Actions worth taking: those that would mend a likely cause first, then the most telling per minute. */
export function rateActions(loom: Loom, leading: readonly Weighed[]): NextAction[] {
	const mass = leading.reduce((sum, w) => sum + w.posterior, 0);
	const shaken = leading.flatMap((w) => (w.fault?.shakenBy ? [w.fault.shakenBy] : []));
	// Restraint plugs are reseated by the maker's procedure, not by a hint from here.
	const parts = new Set(shaken.filter((part) => forbiddenWork(loom, [part]) === undefined));
	const likely = new Set(leading.filter((w) => w.posterior > LIKELY).map((w) => w.fault?.shakenBy ?? ""));
	return [...parts]
		.map((part): NextAction => {
			const bits = information(loom, part, leading, mass);
			const kind = loom.parts.get(part)?.kind ?? "";
			const plug = kind === "connector";
			const what = partWords(loom, part);
			return {
				part,
				text: plug ? `Battery off, pull ${what}, push it home and lock it` : `Pull ${what} and press it home`,
				bits,
				minutes: MINUTES,
				because: `if the codes or readings change afterwards, ${plug ? "its lock was open" : "it was not seated"}; if not, the fault lies elsewhere`,
				place: loom.parts.get(part)?.place ?? "",
			};
		})
		.filter(({ bits, part }) => bits > LEAST_BITS || likely.has(part))
		.sort(
			(x, y) =>
				Number(likely.has(y.part)) - Number(likely.has(x.part)) || y.bits / y.minutes - x.bits / x.minutes,
		)
		.slice(0, MOST);
}

function information(loom: Loom, part: string, leading: readonly Weighed[], mass: number): number {
	let changed = 0;
	let remaining = 0;
	for (const { fault, posterior } of leading) {
		const chance = CHANGES[relation(loom, part, fault)];
		changed += (posterior / mass) * chance;
		remaining += (posterior / mass) * entropy(chance);
	}
	return Math.max(0, entropy(changed) - remaining);
}

/** How a fault stands to a connector: shaken by its reseating, in one of its contacts, or elsewhere. */
function relation(loom: Loom, part: string, fault: Weighed["fault"]): keyof typeof CHANGES {
	if (fault?.shakenBy === part) return "shaken";
	const inside = fault?.path.some((id) => {
		const contact = loom.contacts.get(id);
		return contact !== undefined && (contact.connector === part || contact.part === part);
	});
	return inside ? "inside" : "elsewhere";
}

/** Bits of a yes or no of chance p. */
function entropy(p: number): number {
	if (p <= 0 || p >= 1) return 0;
	return -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);
}
