/** One cold proposal for the demo car. Times leave out Node's own start. */
import { fileURLToPath } from "node:url";
import { openCar } from "@loomwright/engine";
import { planAnswer, readFolder } from "@loomwright/shop";

const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));

/** Seconds from the first line of the work to the answer, and what it says. */
export interface PlanRun {
	readonly seconds: number;
	/** Of the processor, which other work on the machine does not stretch so much. */
	readonly processor: number;
	readonly gap: number;
	readonly minutes: number;
	readonly byHand: number;
	readonly joints: number;
	readonly jointsByHand: number;
	readonly circuits: number;
	readonly made: number;
	readonly overlay: number;
	readonly newLoom: number;
}

/** Reads the tables, proposes, finds each second best and the alternatives, and checks the recipe on the network. */
export async function plan(): Promise<PlanRun> {
	const began = performance.now();
	const used = process.cpuUsage();
	const { tables } = readFolder(folder);
	const answer = await planAnswer(openCar(tables), tables);
	const seconds = (performance.now() - began) / 1000;
	const { user, system } = process.cpuUsage(used);
	const minutesOf = (way: string) =>
		answer.alternatives.find((one) => one.way === way)?.minutes ?? Number.NaN;
	return {
		seconds,
		processor: (user + system) / 1e6,
		gap: answer.gap,
		minutes: answer.minutes,
		byHand: answer.byHand?.minutes ?? Number.NaN,
		joints: answer.choices.reduce((sum, { joints }) => sum + joints, 0),
		jointsByHand: answer.byHand?.joints ?? Number.NaN,
		circuits: answer.choices.length,
		made: answer.checks.filter(({ reached, strays }) => reached !== "" && strays.length === 0).length,
		overlay: minutesOf("overlay loom"),
		newLoom: minutesOf("new loom"),
	};
}
