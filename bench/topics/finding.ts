/**
 * Finding faults: how fast the next reading is named, how well an order of tests does against known optima, and how
 * simulated searches on the demo car end.
 *
 * A case: a fault is drawn from the priors until one comes that shows in some code or function; all units are read
 * out and all functions tried; then what the finder suggests is done (readings, repeats of entries that do not fit,
 * reseating) until it says that it is settled. Faults that no reading at any contact in any condition tells apart
 * count as one; they are listed in data/bench/told-apart-by-nothing.csv.
 */
import { execFile } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { Figure } from "../figure.js";
import { type Alone, CASES, type Half, MISREAD, type Sums } from "../finding/cases.js";
import { nextReading } from "../finding/next-reading.js";
import { overOptimum } from "../finding/published.js";

export async function* run(): AsyncGenerator<Figure> {
	yield* scale();
	yield* sequencing();
	const [first, second] = await Promise.all([inProcess("first"), inProcess("second")]);
	yield* searches(first, second);
}

function* scale(): Generator<Figure> {
	const { seconds, byDefinition, off, sorting } = nextReading();
	const p95 = seconds[Math.ceil(0.95 * seconds.length) - 1]!;
	const median = seconds[seconds.length >> 1]!;
	yield {
		figure: "next reading of 500 with 20,000 faults, 95 of 100 within",
		value: 1000 * p95,
		unit: "ms",
		goal: { below: 100 },
	};
	yield { figure: "the same, median", value: 1000 * median, unit: "ms" };
	yield {
		figure: "times as fast as the plain definition",
		value: byDefinition / median,
		unit: "",
		goal: { atLeast: 20 },
	};
	yield { figure: "largest difference from it", value: off, unit: "bits", goal: { below: 1e-9 } };
	yield { figure: "sorting the predictions into outcomes, once", value: sorting, unit: "s" };
}

function* sequencing(): Generator<Figure> {
	const systems = overOptimum();
	yield { figure: "published and random systems of tests", value: systems.length, unit: "systems" };
	const worst = (pick: (system: (typeof systems)[number]) => number) => Math.max(...systems.map(pick));
	yield {
		figure: "expected cost over the optimum, worst system",
		value: worst(({ planned }) => planned),
		unit: "",
		goal: { below: 1.1 },
	};
	yield {
		figure: "the same by looking ahead alone, as for many suspects",
		value: worst(({ lookingAhead }) => lookingAhead),
		unit: "",
	};
}

const module = new URL("../cold/finding.ts", import.meta.url).href;
const child = fileURLToPath(new URL("../child.ts", import.meta.url));

async function inProcess(name: "first" | "second"): Promise<Half> {
	const { stdout } = await promisify(execFile)(
		process.execPath,
		["--conditions=source", "--import", "tsx", child, module, name],
		{ encoding: "utf8" },
	);
	return JSON.parse(stdout) as Half;
}

function* searches(first: Half, second: Half): Generator<Figure> {
	const total = (pick: (half: Half) => number) => pick(first) + pick(second);
	const share = (of: (half: Half) => Sums, key: keyof Sums) =>
		total((h) => of(h)[key]) / total((h) => of(h).cases);
	const single = (half: Half) => half.single;
	const misread = (half: Half) => half.misread;
	const double = (half: Half) => half.double;
	yield {
		figure: "faults drawn that show in a code or function",
		value: 50 * total((half) => half.showing),
		unit: "%",
	};
	yield {
		figure: "faults that no reading tells from another",
		value: first.same.flat().length,
		unit: "faults",
	};
	yield {
		figure: `in groups, each counted as one (${list(first.same)})`,
		value: first.same.length,
		unit: "groups",
	};
	yield {
		figure: `${CASES.single} single faults: right one first`,
		value: 100 * share(single, "right"),
		unit: "%",
		goal: { atLeast: 90 },
	};
	yield {
		figure: "of these, itself rather than one like it",
		value: 100 * share(single, "exact"),
		unit: "%",
	};
	yield { figure: "readings taken, mean", value: share(single, "readings"), unit: "readings" };
	yield { figure: "to find out at first, mean", value: share(single, "bits"), unit: "bits" };
	yield {
		figure: "readings against that at a bit each",
		value: share(single, "readings") / share(single, "bits"),
		unit: "",
		goal: { below: 1.35 },
	};
	yield {
		figure: `${CASES.misread} single faults, ${100 * MISREAD} % misread: right one first`,
		value: 100 * share(misread, "right"),
		unit: "%",
		goal: { atLeast: 85 },
	};
	yield { figure: "readings taken, mean", value: share(misread, "readings"), unit: "readings" };
	yield {
		figure: `${CASES.double} double faults, neither hiding the other: both first`,
		value: 100 * share(double, "right"),
		unit: "%",
		goal: { atLeast: 70 },
	};
	yield {
		figure: "both, at once or one after the other was mended",
		value: (100 * total((half) => half.inTurn)) / CASES.double,
		unit: "%",
	};
	yield { figure: "readings taken, mean", value: share(double, "readings"), unit: "readings" };
}

/** Writes the groups down, a fault a row. @returns the file, from the root of the tree */
function list(groups: readonly (readonly Alone[])[]): string {
	const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
	const rows = groups.flatMap((group, k) =>
		group.map(({ id, kind, where }) => [`${k + 1}`, id, kind, where].map(quoted).join()),
	);
	const file = "data/bench/told-apart-by-nothing.csv";
	const at = new URL(`../../${file}`, import.meta.url);
	mkdirSync(new URL(".", at), { recursive: true });
	writeFileSync(at, `group,fault,kind,where\r\n${rows.join("\r\n")}\r\n`);
	return file;
}
