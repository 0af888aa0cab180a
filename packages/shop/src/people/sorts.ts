/** The sorts of step that people are let do: what a person may do is decided by sort, not step by step. */
export const SORTS = [
	"wiring",
	"parts",
	"measuring",
	"other",
	"restraints",
	"brakes",
	"start interlock",
	"fuel",
	"first power",
] as const;
export type Sort = (typeof SORTS)[number];

/** Steps of these sorts can hurt someone when wrong: two people always answer for them. */
export const CRITICAL: ReadonlySet<string> = new Set<Sort>([
	"restraints",
	"brakes",
	"start interlock",
	"fuel",
	"first power",
]);
