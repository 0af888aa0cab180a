/** Repeated timing: warm-up, median, spread. */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** Seconds of repeated runs. */
export interface Timing {
	readonly median: number;
	readonly spread: readonly [low: number, high: number];
}

/**
 * Median and range of at least one number.
 *
 * @throws RangeError when there is none
 */
export function summarise(values: readonly number[]): Timing {
	const sorted = [...values].sort((a, b) => a - b);
	const [low, high] = [sorted[0], sorted.at(-1)];
	if (low === undefined || high === undefined) throw new RangeError("summarise: no values");
	const upper = sorted[sorted.length >> 1] as number;
	const lower = sorted[(sorted.length - 1) >> 1] as number;
	return { median: (lower + upper) / 2, spread: [low, high] };
}

/** Results are kept here, so that no work can be left out as unused. */
let sink: unknown;

/** The last result of any timed work. */
export const lastResult = (): unknown => sink;

/**
 * Times work in this process.
 *
 * @param work called once per run; its result is kept
 * @param options runs counted, after runs of warm-up; each run calls `work` `inner` times and divides
 */
export async function time(
	work: () => unknown,
	{ runs = 9, warmUp = 3, inner = 1 }: { runs?: number; warmUp?: number; inner?: number } = {},
): Promise<Timing> {
	const seconds: number[] = [];
	for (let run = -warmUp; run < runs; run++) {
		const began = performance.now();
		for (let i = 0; i < inner; i++) sink = await work();
		if (run >= 0) seconds.push((performance.now() - began) / 1000 / inner);
	}
	return summarise(seconds);
}

/**
 * Times work cold: each run is a fresh process that imports the module and calls one of its functions, which
 * itself returns the figures it took.
 *
 * @param module a file URL, such as `new URL("../cold/demo.ts", import.meta.url)`
 * @param name an exported function without arguments; its result must survive JSON
 */
export function inFreshProcesses<T>(module: URL, name: string, runs: number): T[] {
	const child = fileURLToPath(new URL("child.ts", import.meta.url));
	return Array.from({ length: runs }, () => {
		const out = execFileSync(
			process.execPath,
			["--conditions=source", "--import", "tsx", child, module.href, name],
			{ encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] },
		);
		return JSON.parse(out) as T;
	});
}
