/**
 * How the key brings the car up: at rest, then turned, then with what the units drive once it is turned. Rungs are
 * the car's own listed conditions, those that set least first.
 */
import { type Circuit, conditionOf, settingsOf } from "../../circuit/index.js";
import { isWhole } from "../../rules/support/points.js";
import { positionOf, positionsMeaning, withDuty } from "../../rules/support/positions.js";

export interface Rung {
	/** A listed condition; empty where nothing is set. */
	readonly base: string;
	readonly title: string;
	/** Is the key turned? */
	readonly turned: boolean;
}

/** At rest first; then the listed conditions with the key at run, the car whole and its engine standing. */
export function ladderOf(circuit: Circuit): Rung[] {
	const { loom } = circuit;
	const keys = withDuty(circuit, "start key");
	const listed = [...loom.conditions.values()]
		.map(({ id, title }) => ({ id, title: title || id, settings: settingsOf(loom, id) }))
		.filter(({ settings }) => isWhole(circuit, settings) && engineStands(circuit, settings))
		.sort((x, y) => x.settings.size - y.settings.size);
	const resting = listed.find(({ settings }) =>
		[...settings].every(([subject, state]) => loom.parts.get(subject)?.positions[0]?.name === state),
	);
	const rest = { base: resting?.id ?? "", title: resting?.title ?? "everything at rest", turned: false };
	const turned = listed
		.filter(({ settings }) =>
			keys.every((key) => positionsMeaning(key, "run").includes(positionOf(settings, key))),
		)
		.map(({ id, title }): Rung => ({ base: id, title, turned: true }));
	return keys.length === 0 ? [rest] : [rest, ...turned];
}

function engineStands({ loom }: Circuit, settings: ReadonlyMap<string, string>): boolean {
	return [...loom.parts.values()].every(
		(part) => part.kind !== "generator" || settings.get(part.id) !== "on",
	);
}

/** The condition of a rung with some fuses pulled and further settings. */
export function standingAt(
	{ loom }: Circuit,
	base: string,
	pulled: Iterable<string>,
	more: Iterable<readonly [string, string]> = [],
): string {
	const settings: (readonly [string, string])[] = [...more];
	for (const id of pulled) settings.push([id, "pulled"]);
	if (base === "")
		for (const part of loom.parts.values()) if (part.kind === "battery") settings.unshift([part.id, "on"]);
	return conditionOf(settings, base);
}
