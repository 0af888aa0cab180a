/** The line of work: its stages in order, in words. */
import type { Stage } from "./route.js";

export interface LineStage {
	/** The page it opens. */
	readonly stage: Exclude<Stage, "start" | "size" | "what-if" | "transfer" | "versions">;
	readonly name: string;
	readonly asks: string;
	/** All its pages, where there are several. */
	readonly pages?: readonly StagePage[];
}

export interface StagePage {
	readonly stage: Stage;
	readonly name: string;
}

export const LINE: readonly LineStage[] = [
	{
		stage: "plan",
		name: "Choose",
		asks: "How is each circuit made, what does it cost, and what else could it be?",
		pages: [
			{ stage: "plan", name: "Proposal" },
			{ stage: "size", name: "Sizes" },
			{ stage: "what-if", name: "What if" },
			{ stage: "transfer", name: "Other car" },
			{ stage: "versions", name: "Versions" },
		],
	},
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

/** Where a page stands on the line; -1: on none of its stages. */
export const placeOnLine = (at: Stage): number =>
	LINE.findIndex(({ stage, pages }) => stage === at || pages?.some((page) => page.stage === at));
