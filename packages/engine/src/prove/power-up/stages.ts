/**
 * The staged power-up of the converted car: battery through a test lamp with every fuse out, then one fuse at a
 * time, control units last, key on, start inhibited, crank. What becomes live, what moves and every limit is solved
 * from the car's own network. It never replaces the procedures of the car's maker.
 */
import type { Circuit } from "../../circuit/index.js";
import type { Part } from "../../loom/index.js";
import { CAUTIONS } from "../../rules/support/cautions.js";
import { amount, list, partText } from "../../rules/support/words.js";
import { restraintFuses } from "../restraints.js";
import { type FuseStep, fusePlan } from "./fuse-order.js";
import { ladderOf, type Rung, standingAt } from "./ladder.js";
import { liveCautions, movesBetween } from "./moves.js";
import { batteryPost, readsOfFunctions, readsOfLoads } from "./reads.js";
import { crankStages, inhibitStages } from "./starting.js";
import { CarState } from "./state.js";
import type { Stage, StageReading } from "./types.js";

type Draft = Omit<Stage, "number">;

/** The lamp put in the battery's lead: 21 W at 13.5 V, ECE R37 from memory; ohms when it burns. */
const LAMP_OHMS = 13.5 ** 2 / 21;
/** Volts across it from which on a filament is seen to glow. Common practice, no source. */
const GLOWS_VOLTS = 1;

/** What powering up needs of an opened car. */
export interface Powered {
	circuit(which: "converted"): Circuit;
}

/**
 * Stages in order; empty for a car without a battery.
 * @throws CircuitError when the car does not settle with every fuse out
 */
export function powerUp(car: Powered): Stage[] {
	const circuit = car.circuit("converted");
	const { loom } = circuit;
	const [plus, minus] = [batteryPost(loom, "+"), batteryPost(loom, "-")];
	if (plus === undefined || minus === undefined) return [];
	const late = restraintFuses(circuit);
	const fuses = [...loom.parts.values()].filter((part) => part.kind === "fuse");
	const all = fuses.map((fuse) => fuse.id);
	const ladder = ladderOf(circuit);
	const { steps, idle } = fusePlan(circuit, ladder, late);
	const out = [...idle, ...late].map((fuse) => fuse.id);
	const drafts: Draft[] = [
		clampsStage(circuit, plus, minus, all),
		lampStage(circuit, plus, minus, all),
		batteryStage(circuit, ladder[0]!, plus, minus, all),
		...fuseStages(circuit, ladder, steps),
		...finalKeyStage(circuit, ladder, steps, out),
		...inhibitStages(circuit, out),
		...crankStages(circuit, lastState(circuit, ladder, steps, out), out),
		...restraintStage(circuit, late),
	];
	return drafts.map((draft, number) => ({ number, ...draft }));
}

function clampsStage(circuit: Circuit, plus: string, minus: string, fuses: readonly string[]): Draft {
	const off = [...circuit.loom.parts.values()].filter((part) => part.kind === "battery");
	const when = standingAt(
		circuit,
		"",
		fuses,
		off.map((part): [string, string] => [part.id, "off"]),
	);
	const state = new CarState(circuit, when, { dead: true });
	return {
		kind: "before power",
		title: "before power: the prove sheet, and the battery's clamps",
		connect: ["Battery still disconnected, key out, all switches at rest.", ...takeOut(fuses)],
		read: [state.read("ohms", plus, minus) ?? []].flat(),
		mustBeTrue: ["Every row of the prove sheet passes."],
		live: [],
		safe: ["Nothing is live."],
		cautions: [CAUTIONS.battery],
	};
}

const takeOut = (fuses: readonly string[]): string[] =>
	fuses.length === 0 ? [] : [`Take out every fuse: ${list(fuses)}.`];

/** Battery plus through a lamp: what goes wrong cannot draw more than the lamp. */
function lampStage(circuit: Circuit, plus: string, minus: string, fuses: readonly string[]): Draft {
	const branch = circuit.branchesOf
		.get(plus)!
		.find((k) => circuit.branches[k]!.owner.what === "mated contact")!;
	const change = { branches: [{ branch, seriesOhms: LAMP_OHMS }], added: [] };
	const state = new CarState(circuit, standingAt(circuit, "", fuses), { change });
	const { volts } = circuit.loom.parts.get(circuit.loom.contacts.get(plus)!.part)!.values;
	const source = volts ?? 12.6;
	const behind = state.read("volts", plus, minus);
	const across = source - (behind?.value ?? 0);
	const live = partsOf(circuit, state.newlyFed(undefined));
	return {
		kind: "test lamp",
		title: "battery through a test lamp, every fuse out",
		connect: ["Minus clamp on.", "A 21 W lamp between the battery's plus post and its clamp."],
		read: behind ? [behind] : [],
		mustBeTrue: [
			across < GLOWS_VOLTS
				? "The lamp stays dark: a bright one means a short ahead of the fuses."
				: `The lamp glows at ${amount(across, "V")}; at full brightness something ahead of the fuses is shorted.`,
		],
		live,
		safe: [
			`At most ${amount(source / LAMP_OHMS, "A")} flow once the lamp burns, whatever is wrong.`,
			`Only ${list(live.map((id) => partText(circuit.loom, id)))} can be live; everything behind a fuse is dead.`,
		],
		cautions: [CAUTIONS.battery],
	};
}

function batteryStage(
	circuit: Circuit,
	rest: Rung,
	plus: string,
	minus: string,
	fuses: readonly string[],
): Draft {
	const state = new CarState(circuit, standingAt(circuit, rest.base, fuses));
	const live = state.newlyFed(undefined);
	const feeds = live.filter(
		(id) => circuit.loom.parts.get(circuit.loom.contacts.get(id)!.part)?.kind === "fuse",
	);
	const volts = [plus, ...feeds].flatMap((id) => state.read("volts", id, minus) ?? []);
	return {
		kind: "battery",
		title: "battery connected, every fuse out",
		connect: ["Test lamp out, plus clamp on its post and tight."],
		read: volts,
		mustBeTrue: movesBetween(undefined, state),
		live: partsOf(circuit, live),
		safe: unpowered(state),
		cautions: liveCautions(state, partsOf(circuit, live)),
	};
}

/** One stage for each fuse, and one for each turn of the key that feeds need. */
function fuseStages(circuit: Circuit, ladder: readonly Rung[], steps: readonly FuseStep[]): Draft[] {
	return steps.flatMap((step, k): Draft[] => {
		const rung = ladder[step.rung]!;
		const last = steps[k - 1];
		const turn =
			rung.turned && last?.rung !== step.rung ? [keyStage(circuit, rung, last?.after, step.before)] : [];
		return [...turn, fuseStage(circuit, rung, step)];
	});
}

function keyStage(circuit: Circuit, rung: Rung, before: CarState | undefined, state: CarState): Draft {
	const live = state.newlyFed(before);
	return {
		kind: "key on",
		title: `key on: ${rung.title}`,
		connect: [`Bring the car to '${rung.title}'; fuses not yet in stay out.`],
		read: readsOfLoads(state, live),
		mustBeTrue: movesBetween(before, state),
		live: partsOf(circuit, live),
		safe: unpowered(state),
		cautions: liveCautions(state, partsOf(circuit, live)),
	};
}

function fuseStage(circuit: Circuit, rung: Rung, { fuse, feed, load, before, after }: FuseStep): Draft {
	const { loom } = circuit;
	const live = after.newlyFed(before);
	const minus = batteryPost(loom, "-")!;
	const rating = fuse.values.amps;
	const current = after.read("amps", feed, load);
	const reads = [current, after.read("volts", load, minus)].flatMap((reading) => reading ?? []);
	return {
		kind: "fuse",
		title: `fuse ${partText(loom, fuse.id)}`,
		connect: [
			rung.turned
				? `Key off, fuse ${fuse.id} in, then again to '${rung.title}'.`
				: `Fuse ${fuse.id} in, ${rung.title}.`,
		],
		read: [...reads, ...readsOfLoads(after, live)],
		mustBeTrue: [
			...(rating === undefined ? [] : [`The current never comes near the fuse's ${amount(rating, "A")}.`]),
			...movesBetween(before, after),
		],
		live: partsOf(circuit, live).filter((id) => id !== fuse.id),
		safe: unpowered(after),
		cautions: liveCautions(after, partsOf(circuit, live)),
	};
}

/** Whole car, key on: what its functions need there. */
function finalKeyStage(
	circuit: Circuit,
	ladder: readonly Rung[],
	steps: readonly FuseStep[],
	out: readonly string[],
): Draft[] {
	const rung = finalRung(ladder, steps);
	const state = lastState(circuit, ladder, steps, out);
	if (rung === undefined || state === undefined) return [];
	const before = steps.at(-1)?.after;
	const draft = keyStage(circuit, rung, before, state);
	return [
		{
			...draft,
			title: `key on, all fuses in: ${rung.title}`,
			connect: [`Bring the car to '${rung.title}'.`],
			read: unique([...draft.read, ...readsOfFunctions(state, rung.base)]),
		},
	];
}

/** The turn of the key at which the last fuse went in, or the first there is. */
function finalRung(ladder: readonly Rung[], steps: readonly FuseStep[]): Rung | undefined {
	const most = Math.max(1, ...steps.map((step) => step.rung));
	return ladder[most];
}

function lastState(
	circuit: Circuit,
	ladder: readonly Rung[],
	steps: readonly FuseStep[],
	out: readonly string[],
): CarState | undefined {
	const rung = finalRung(ladder, steps);
	return rung && CarState.settled(circuit, standingAt(circuit, rung.base, out));
}

function restraintStage({ loom }: Circuit, late: readonly Part[]): Draft[] {
	if (late.length === 0) return [];
	return [
		{
			kind: "restraints",
			title: `restraints: ${list(late.map((fuse) => partText(loom, fuse.id)))}`,
			connect: [
				"Key off, battery disconnected, wait the time the car's maker gives, nobody in the car.",
				`Fuse ${list(late.map((fuse) => fuse.id))} in, battery on, all by the maker's procedure.`,
			],
			read: [],
			mustBeTrue: ["The restraint lamp behaves as the maker says."],
			live: late.map((fuse) => fuse.id),
			safe: [],
			cautions: [CAUTIONS.restraint],
		},
	];
}

function partsOf({ loom }: Circuit, contacts: readonly string[]): string[] {
	return [...new Set(contacts.map((id) => loom.contacts.get(id)!.part))];
}

/** That units are still without supply. */
function unpowered(state: CarState): string[] {
	const { loom } = state.circuit;
	const dead = [...loom.parts.values()]
		.filter((part) => part.kind === "control unit")
		.filter((part) =>
			[...loom.contacts.values()].every(
				({ id, part: of, role }) => of !== part.id || role !== "supply" || !state.isFed(id),
			),
		);
	return dead.length === 0 ? [] : [`Still without supply: ${list(dead.map((part) => part.id))}.`];
}

function unique(readings: readonly StageReading[]): StageReading[] {
	return [...new Map(readings.map((r) => [`${r.unit} ${r.from} ${r.to}`, r])).values()];
}
