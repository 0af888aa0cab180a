/** The line of work: its stages in order, in words. */
import type { Stage } from "./route.js";

export interface LineStage {
	readonly stage: Exclude<Stage, "start">;
	readonly name: string;
	readonly asks: string;
}

export const LINE: readonly LineStage[] = [
	{
		stage: "changes",
		name: "Changes",
		asks: "What is cut and joined, cavity by cavity, and in which order?",
	},
	{ stage: "checks", name: "Checks", asks: "What is wrong with the loom before anyone cuts or powers up?" },
	{ stage: "reading", name: "Reading", asks: "What should the meter show between two points?" },
	{
		stage: "prove",
		name: "Prove",
		asks: "Which readings, before power, would show any mistake in the finished loom?",
	},
	{
		stage: "power",
		name: "Power up",
		asks: "What is connected next, and what must be true before going on?",
	},
	{ stage: "find", name: "Find", asks: "Which fault explains what was seen, and what to measure next?" },
];
