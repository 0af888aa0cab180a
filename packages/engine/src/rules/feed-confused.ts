/** A switched feed and a permanent one must not be taken for each other. */
import type { Circuit } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { upstream } from "./support/flow.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { positionOf, withDuty } from "./support/positions.js";
import { pinSetting, pinVolts } from "./support/unit-pins.js";
import { namesAlong } from "./support/ways.js";
import { amount, contactText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "feed-confused";

/** From this on a feed is live. */
export const LIVE_VOLTS = 6;

/**
 * Key out is every start key in its position at rest. A wake line must be dead then. A supply of a unit or module that
 * the car had as delivered must stay what it was: live or dead with the key out, where it is live in any condition.
 */
export const feedConfused: Rule = {
	id,
	title: "Switched feeds are switched, permanent feeds are permanent",
	source: `live from ${LIVE_VOLTS} V: common practice, no source; DIN 72552 terminals 15 and 30`,
	check(circuit, before) {
		const { parts, contacts } = circuit.loom;
		return [...contacts.values()].flatMap((pin) => {
			const kind = parts.get(pin.part)?.kind;
			if (kind !== "control unit" && kind !== "module") return [];
			if (pin.role === "wake") return neverSleeps(circuit, pin) ?? [];
			if (pin.role !== "supply" || before === undefined || !before.loom.contacts.has(pin.id)) return [];
			return changedOver(circuit, before, pin) ?? [];
		});
	},
};

/** Whole conditions with the key out, and with it anywhere else. */
function byKey(circuit: Circuit): { out: readonly Settled[]; on: readonly Settled[] } {
	const keys = withDuty(circuit, "start key");
	const isOut = ({ settings }: Settled) =>
		keys.length > 0 && keys.every((key) => positionOf(settings, key) === key.positions[0]?.name);
	const whole = wholeConditions(circuit);
	return { out: whole.filter(isOut), on: whole.filter((one) => !isOut(one)) };
}

/** The condition in which a pin has most volts. */
function most(conditions: readonly Settled[], pin: Contact): { at: Settled; volts: number } | undefined {
	let best: { at: Settled; volts: number } | undefined;
	for (const at of conditions) {
		const volts = pinVolts(at.point, pin.id);
		if (best === undefined || volts > best.volts) best = { at, volts };
	}
	return best;
}

function neverSleeps(circuit: Circuit, pin: Contact): Finding | undefined {
	const out = most(byKey(circuit).out, pin);
	if (out === undefined || out.volts < (pinSetting(circuit, pin, "volts") ?? LIVE_VOLTS)) return undefined;
	return finding(circuit, id, "stop", {
		where: contactText(circuit.loom, pin.id),
		why: `The wake line has ${amount(out.volts, "V")} in '${out.at.condition}', with the key out: ${pin.part} never sleeps and empties the battery.`,
		mend: "Take it from a feed that the key switches (terminal 15).",
		path: [...fedBy(circuit, out.at, pin), pin.id, pin.part],
	});
}

function changedOver(circuit: Circuit, before: Circuit, pin: Contact): Finding | undefined {
	const [now, was] = [circuit, before].map((one) => {
		const { out, on } = byKey(one);
		return { out: most(out, pin), on: most(on, pin) };
	}) as [Seen, Seen];
	if (!now.out || !was.out || !now.on || !was.on) return undefined;
	// Dead in every condition, before or now: no feed at all, which other rules tell.
	if (
		Math.max(now.out.volts, now.on.volts) < LIVE_VOLTS ||
		Math.max(was.out.volts, was.on.volts) < LIVE_VOLTS
	)
		return undefined;
	const [live, lived] = [now.out.volts >= LIVE_VOLTS, was.out.volts >= LIVE_VOLTS];
	if (live === lived) return undefined;
	return finding(circuit, id, "stop", {
		where: contactText(circuit.loom, pin.id),
		why: live
			? `It was dead with the key out as delivered and has ${amount(now.out.volts, "V")} in '${now.out.at.condition}' now: it draws from the parked car's battery.`
			: `It was live with the key out as delivered and is dead in '${now.out.at.condition}' now: ${pin.part} forgets what it learned, or cannot shut down.`,
		mend: live
			? "Take it from a feed that the key switches (terminal 15)."
			: "Take it from the permanent feed (terminal 30).",
		path: [...fedBy(circuit, live ? now.out.at : now.on.at, pin), pin.id, pin.part],
	});
}

interface Seen {
	readonly out: { at: Settled; volts: number } | undefined;
	readonly on: { at: Settled; volts: number } | undefined;
}

function fedBy(circuit: Circuit, at: Settled, pin: Contact): string[] {
	return namesAlong(circuit, upstream(at.point, pinOf(circuit, pin)).branches.toReversed());
}
