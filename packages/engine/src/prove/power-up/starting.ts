/** The last stages: that the start is inhibited where it must be, read with the starter's own plug off; and cranking. */
import type { Circuit } from "../../circuit/index.js";
import { contactsOfPart, type Part, wiresAtContact } from "../../loom/index.js";
import { forbidden } from "../../readings/index.js";
import { deciding, PERMITS } from "../../rules/start-interlock.js";
import { CAUTIONS } from "../../rules/support/cautions.js";
import {
	combinations,
	conditionsWith,
	positionsMeaning,
	settingsText,
	withDuty,
} from "../../rules/support/positions.js";
import { partText } from "../../rules/support/words.js";
import { standingAt } from "./ladder.js";
import { liveCautions, movesBetween } from "./moves.js";
import { batteryPost, readsOfFunctions } from "./reads.js";
import { CarState } from "./state.js";
import type { Stage, StageReading } from "./types.js";

type Draft = Omit<Stage, "number">;

/** Listed conditions with the key at start, those that set least first. */
function starts(circuit: Circuit): string[] {
	const keys = withDuty(circuit, "start key");
	if (keys.length === 0) return [];
	return [...conditionsWith(circuit, keys, "start")]
		.sort((x, y) => x.settings.size - y.settings.size)
		.map(({ condition }) => condition);
}

/**
 * Every combination of the switches that decide about starting, key at start, read at the starter's control terminal.
 * With its plug off nothing turns, whatever the reading.
 * @param out fuses still out
 */
export function inhibitStages(circuit: Circuit, out: readonly string[]): Draft[] {
	const { loom } = circuit;
	const [base] = starts(circuit);
	const minus = batteryPost(loom, "-");
	if (base === undefined || minus === undefined) return [];
	const switches = deciding(circuit);
	return startersOf(circuit).flatMap(({ starter, control, plug }): Draft[] => {
		const off: [string, string][] = plug === undefined ? [] : [[plug.id, "unmated"]];
		const trials = combinations(switches).flatMap((positions) => {
			const when = standingAt(circuit, base, out, [...positions, ...off]);
			const state = CarState.settled(circuit, when);
			const reading = state?.read("volts", control, minus);
			return reading ? [{ positions, reading, permitted: permits(switches, positions) }] : [];
		});
		if (trials.length === 0) return [];
		const dead = (reading: StageReading) => (reading.value ?? 0) < 1;
		const where = partText(loom, starter.id);
		return [
			{
				kind: "start inhibited",
				title: `start inhibited: ${where}`,
				connect: [
					"Key off, neutral, wheels chocked.",
					plug === undefined
						? `Take the lead off ${control} and insulate it: the starter cannot turn.`
						: `Take plug ${plug.id} off the starter: it cannot turn.`,
					...trials.map(
						({ positions }, k) => `Reading ${k + 1}: ${settingsText(positions)}, key held at start.`,
					),
				],
				read: trials.map(({ reading }) => reading),
				mustBeTrue: trials.map(({ positions, reading }) =>
					dead(reading)
						? `With ${settingsText(positions)} terminal 50 of ${starter.id} stays dead.`
						: `With ${settingsText(positions)} terminal 50 of ${starter.id} gets its feed.`,
				),
				live: [],
				safe: plug === undefined ? [] : [`${where} cannot turn: its plug ${plug.id} is off.`],
				cautions: [
					CAUTIONS.start,
					...trials
						.filter(({ permitted, reading }) => !permitted && !dead(reading))
						.map(
							({ positions }) =>
								`Stop: with ${settingsText(positions)} this loom itself lets the car start. Mend it before cranking.`,
						),
				],
			},
		];
	});
}

function permits(switches: readonly Part[], positions: ReadonlyMap<string, string>): boolean {
	return switches.some((part) =>
		positionsMeaning(part, PERMITS[part.duty]!).includes(positions.get(part.id)!),
	);
}

/** Starters with their control terminal, and the plug that it sits in alone. */
function startersOf(circuit: Circuit): { starter: Part; control: string; plug: Part | undefined }[] {
	const { loom } = circuit;
	return [...loom.parts.values()]
		.filter((part) => part.kind === "starter")
		.flatMap((starter) => {
			const control = contactsOfPart(loom, starter.id).find(({ role }) => role === "50");
			if (!control || forbidden(loom, control.id) || wiresAtContact(loom, control.id).length === 0) return [];
			return [{ starter, control: control.id, plug: loom.parts.get(control.connector) }];
		});
}

/** Cranking in the first listed condition in which a starter turns. */
export function crankStages(circuit: Circuit, before: CarState | undefined, out: readonly string[]): Draft[] {
	const { loom } = circuit;
	for (const condition of starts(circuit)) {
		const state = CarState.settled(circuit, standingAt(circuit, condition, out));
		const turning = [...(state?.states().values() ?? [])].filter(
			(s) => s.element === "solenoid" && s.state > 0,
		);
		if (state === undefined || turning.length === 0) continue;
		const { title } = loom.conditions.get(condition)!;
		const [plus, minus] = [batteryPost(loom, "+"), batteryPost(loom, "-")];
		const battery = plus && minus ? (state.read("volts", plus, minus) ?? []) : [];
		const live = [...new Set(state.newlyFed(before).map((id) => loom.contacts.get(id)!.part))];
		return [
			{
				kind: "crank",
				title: `crank: ${title || condition}`,
				connect: [
					"Key off, plug of the starter back on and locked.",
					`Bring the car to '${title || condition}'.`,
				],
				read: [battery, readsOfFunctions(state, condition)].flat(),
				mustBeTrue: movesBetween(before, state),
				live,
				safe: [],
				cautions: [...new Set([CAUTIONS.start, ...liveCautions(state, live)])],
			},
		];
	}
	return [];
}
