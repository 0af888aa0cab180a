/** A converted car must not draw more than the delivered one when it is parked. */
import { branchAmps, type Circuit, type Operating } from "../circuit/index.js";
import { deviceKind } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { loadsOf } from "./support/loads.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { positionOf, withDuty } from "./support/positions.js";
import { amount, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "parked-draw";

/** Of what the conversion adds. reference/electrical/practice-limits.csv, row 037 (from memory); row 035 has 35 mA. */
export const MOST_AMPS = 0.05;

/**
 * Current out of the batteries, less that as delivered, in each whole condition of both cars in which every start key
 * is at rest and no other switch is set. What a sleeping unit itself draws is not in the tables, so the sum is not judged.
 */
export const parkedDraw: Rule = {
	id,
	title: "The parked car draws no more than as delivered",
	source: `${MOST_AMPS * 1000} mA: reference/electrical/practice-limits.csv row 037`,
	check(circuit, before) {
		if (before === undefined || withDuty(circuit, "start key").length === 0) return [];
		const known = new Map(wholeConditions(before).map((at) => [at.condition, at]));
		let worst: Grown | undefined;
		for (const at of wholeConditions(circuit)) {
			const was = known.get(at.condition);
			if (was === undefined || !isParked(circuit, at.settings)) continue;
			const amps = batteryAmps(at.point) - batteryAmps(was.point);
			if (amps > (worst?.amps ?? MOST_AMPS)) worst = { at, was, amps };
		}
		return worst === undefined ? [] : [report(worst)];
	},
};

interface Grown {
	readonly at: Settled;
	readonly was: Settled;
	/** More than as delivered. */
	readonly amps: number;
}

function isParked(circuit: Circuit, settings: ReadonlyMap<string, string>): boolean {
	return [...circuit.loom.parts.values()].every(
		(part) =>
			part.kind !== "switch" ||
			!settings.has(part.id) ||
			positionOf(settings, part) === part.positions[0]?.name,
	);
}

function batteryAmps(point: Operating): number {
	const { circuit } = point;
	return circuit.branches.reduce(
		(sum, _, branch) =>
			deviceKind(circuit, branch) === "battery" ? sum + Math.abs(branchAmps(point, branch)) : sum,
		0,
	);
}

/** Amperes by part. */
function draws({ point }: Settled): Map<string, number> {
	const found = new Map<string, number>();
	for (const { part, branch } of loadsOf(point.circuit))
		found.set(part.id, (found.get(part.id) ?? 0) + Math.abs(branchAmps(point, branch)));
	return found;
}

function report({ at, was, amps }: Grown): Finding {
	const { circuit } = at.point;
	const old = draws(was);
	const parts = [...draws(at)]
		.filter(([part, now]) => now - (old.get(part) ?? 0) > MOST_AMPS / 10)
		.map(([part]) => part);
	const batteries = [...circuit.loom.parts.values()].filter((part) => part.kind === "battery");
	return finding(circuit, id, "warn", {
		where: parts.length > 0 ? list(parts.map((part) => partText(circuit.loom, part))) : `'${at.condition}'`,
		why: `In '${at.condition}' the battery gives ${amount(amps, "A")} more than as delivered; at most ${amount(MOST_AMPS, "A")} is right. It is flat after some days.`,
		mend: "Find what feeds them with the key out, and give them a feed that the key switches.",
		path: parts.length > 0 ? parts : batteries.map((part) => part.id),
	});
}
