/** What moves between two states of the car, in words, and what then must be minded. */
import { branchAmps } from "../../circuit/index.js";
import { CAUTIONS, cautionsOf } from "../../rules/support/cautions.js";
import { partText } from "../../rules/support/words.js";
import type { CarState } from "./state.js";

/** Amperes from which on a motor is taken to run. */
const RUNS_AMPS = 0.5;

/** Words by element for going up and coming back; others (units, limits of drivers) are not to be seen. */
const WORDS: Readonly<Record<string, readonly [up: string, back: string]>> = {
	coil: ["pulls in", "drops out"],
	solenoid: ["cranks", "comes to rest"],
	filament: ["lights", "goes out"],
	junction: ["lights", "goes out"],
};

/** Sentences: `K7 terminal-15 relay (dash, left) pulls in`; and that no relay or starter moves besides. */
export function movesBetween(before: CarState | undefined, after: CarState): string[] {
	const { loom } = after.circuit;
	const was = before?.states();
	const said: string[] = [];
	let relays = 0;
	for (const [key, { part, element, state }] of after.states()) {
		const words = WORDS[element];
		const earlier = was?.get(key)?.state ?? 0;
		if (!words || earlier === state || loom.parts.get(part)?.kind === "diode") continue;
		if (element === "coil") relays++;
		said.push(`${partText(loom, part)} ${state > earlier ? words[0] : words[1]}.`);
	}
	for (const part of running(after))
		if (!before || !running(before).includes(part)) said.push(`${partText(loom, part)} runs.`);
	if ([...loom.parts.values()].some((part) => part.kind === "relay"))
		said.push(relays > 0 ? "No other relay moves." : "No relay moves.");
	return said;
}

/** Motors with current. */
export function running({ circuit, point }: CarState): string[] {
	return [...circuit.loom.parts.values()]
		.filter((part) => part.kind === "motor")
		.filter((part) =>
			(circuit.branchesOf.get(part.id) ?? []).some(
				(k) => circuit.branches[k]!.owner.what === "device" && Math.abs(branchAmps(point, k)) > RUNS_AMPS,
			),
		)
		.map((part) => part.id);
}

/** Cautions of what becomes live and of what runs. */
export function liveCautions(state: CarState, live: readonly string[]): string[] {
	const { loom } = state.circuit;
	const moving = running(state).map(
		(part) => `${partText(loom, part)} runs: keep hands, hair and leads clear.`,
	);
	return [...cautionsOf(loom, live).filter((text) => text !== CAUTIONS.battery), ...moving];
}
