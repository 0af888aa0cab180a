/** What a figure should reach. */
export type Goal = { readonly below: number } | { readonly atMost: number } | { readonly atLeast: number };

/** One measured figure. */
export interface Figure {
	/** What was measured, in plain words. */
	readonly figure: string;
	readonly value: number;
	/** SI unit, `%`, or a counted noun such as `faults`; empty for a pure ratio. */
	readonly unit: string;
	readonly goal?: Goal | undefined;
	/** Lowest and highest of the repeated runs, in the same unit. */
	readonly spread?: readonly [low: number, high: number] | undefined;
}

/** What a topic's file in bench/topics exports. */
export interface Topic {
	run(): Promise<readonly Figure[]> | AsyncIterable<Figure>;
}

/** A goal as text, such as `< 1`; empty without a goal. */
export function goalText(goal: Goal | undefined): string {
	if (goal === undefined) return "";
	if ("below" in goal) return `< ${goal.below}`;
	return "atMost" in goal ? `<= ${goal.atMost}` : `>= ${goal.atLeast}`;
}

/** Whether a value reaches its goal; null without a goal. Not a number never does. */
export function holds(value: number, goal: Goal | undefined): boolean | null {
	if (goal === undefined) return null;
	if ("below" in goal) return value < goal.below;
	return "atMost" in goal ? value <= goal.atMost : value >= goal.atLeast;
}

/** One line of JSON with the keys figure, value, unit, goal, holds. */
export const jsonLine = ({ figure, value, unit, goal }: Figure): string =>
	JSON.stringify({ figure, value, unit, goal: goalText(goal) || null, holds: holds(value, goal) });

const short = (value: number): string =>
	Number.isInteger(value) || Math.abs(value) >= 1e5 ? String(Math.round(value)) : value.toPrecision(3);

const VERDICT = { true: "holds", false: "MISSED", null: "" } as const;

/** One line for people, in columns: figure, value, spread, goal, verdict. */
export function tableLine({ figure, value, unit, goal, spread }: Figure): string {
	const range = spread ? `${short(spread[0])} to ${short(spread[1])}` : "";
	const verdict = VERDICT[`${holds(value, goal)}`];
	const columns = [
		figure.padEnd(58),
		short(value).padStart(9),
		unit.padEnd(10),
		range.padEnd(20),
		goalText(goal).padEnd(8),
	];
	return `${columns.join(" ")} ${verdict}`.trimEnd();
}
