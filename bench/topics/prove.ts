/**
 * The prove sheet of the demo car: what it catches, how many readings it takes against the least possible, how long
 * it takes to find, and its claims held against full solves of the whole circuit.
 */
import { fileURLToPath } from "node:url";
import {
	type Car,
	type Fault,
	judge,
	openCar,
	type ProveSheet,
	powerUp,
	proveSheet,
	type SheetRow,
} from "@loomwright/engine";
import { readFolder } from "@loomwright/shop";
import { type Circuit, operate, probeValue } from "../../packages/engine/src/circuit/index.js";
import { faultsOf } from "../../packages/engine/src/faults/index.js";
import { limits } from "../../packages/engine/src/prove/detect.js";
import { sensitivity } from "../../packages/engine/src/readings/index.js";
import type { ProveRun } from "../cold/prove.js";
import type { Figure } from "../figure.js";
import { inFreshProcesses, summarise } from "../measure.js";

const RUNS = 3;
const cold = new URL("../cold/prove.ts", import.meta.url);
const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));
/** One in so many of the caught faults is solved in full. */
const SAMPLE = 25;
/** Faults at least as likely as this are those of joints that hands were on (engine's table of rates). */
const WORKED_ON = 5e-5;

export async function* run(): AsyncGenerator<Figure> {
	const car = openCar(readFolder(folder).tables);
	const sheet = proveSheet(car);
	const { coverage, readings, lowerBound } = sheet;
	yield {
		figure: "faults looked for, added resistance from 1 ohm on",
		value: coverage.faults,
		unit: "faults",
	};
	yield { figure: "of these, detectable before power", value: coverage.detectable, unit: "faults" };
	yield {
		figure: "of the detectable ones, caught by the sheet",
		value: (100 * coverage.caught) / coverage.detectable,
		unit: "%",
		goal: { atLeast: 98 },
	};
	for (const [reason, count] of reasons(sheet))
		yield { figure: `not caught: ${reason}`, value: count, unit: "faults" };
	yield { figure: "readings offered to choose from", value: sheet.offered, unit: "readings" };
	yield { figure: "readings on the sheet", value: readings, unit: "readings" };
	yield { figure: "no smaller sheet than", value: lowerBound, unit: "readings" };
	yield { figure: "size against that bound", value: readings / lowerBound, unit: "", goal: { below: 1.1 } };
	yield { figure: "times a lead goes to another place", value: sheet.placeChanges, unit: "times" };
	yield { figure: "ways the car stands for it", value: sheet.parts.length, unit: "ways" };
	const { claims, confirmed, clear } = check(car, sheet);
	yield { figure: "claims of the sheet solved in full", value: claims, unit: "claims" };
	yield {
		figure: "of these, outside the row's limits",
		value: (100 * confirmed) / claims,
		unit: "%",
		goal: { atLeast: 100 },
	};
	yield {
		figure: "of these, clear of them by the fault's own scatter",
		value: (100 * clear) / claims,
		unit: "%",
		goal: { atLeast: 98 },
	};
	const worked = proveSheet(car, { leastPrior: WORKED_ON });
	yield { figure: "readings for what hands were on alone", value: worked.readings, unit: "readings" };
	yield { figure: "stages of the power-up", value: powerUp(car).length, unit: "stages" };
	const runs = inFreshProcesses<ProveRun>(cold, "prove", RUNS);
	const sheets = summarise(runs.map((r) => r.sheet));
	const stages = summarise(runs.map((r) => r.stages));
	yield { figure: "finding the sheet", value: sheets.median, unit: "s", spread: sheets.spread };
	yield { figure: "finding the stages", value: stages.median, unit: "s", spread: stages.spread };
}

function reasons({ missed }: ProveSheet): [reason: string, count: number][] {
	const count = new Map<string, number>();
	for (const { reason, only } of missed)
		if (only.length === 0) count.set(reason, (count.get(reason) ?? 0) + 1);
	return [...count].sort((x, y) => y[1] - x[1]);
}

/** Claims of a sample of faults, each by a solve of the whole car with the fault in it. */
function check(car: Car, sheet: ProveSheet): { claims: number; confirmed: number; clear: number } {
	const { circuit, faults } = faultsOf(car, "converted", true);
	const rows = sheet.parts.flatMap((part) => part.rows);
	const claimed = new Map<string, SheetRow[]>();
	for (const row of rows) for (const id of row.catches) claimed.set(id, [...(claimed.get(id) ?? []), row]);
	// Loose housings have many ways; each of their contacts is among the open ones.
	const steady = faults.filter((fault) => fault.shakenBy === "" && claimed.has(fault.id));
	const found = { claims: 0, confirmed: 0, clear: 0 };
	for (let k = 0; k < steady.length; k += SAMPLE)
		for (const row of claimed.get(steady[k]!.id)!) {
			const { outside, apart } = solved(circuit, sheet, row, steady[k]!);
			found.claims++;
			found.confirmed += Number(outside);
			found.clear += Number(apart);
		}
	return found;
}

function solved(circuit: Circuit, sheet: ProveSheet, row: SheetRow, fault: Fault) {
	const { from, to, when } = row.question;
	// The first pattern of a poor connection is 1 ohm.
	const { change } = fault.patterns[0]!;
	const point = operate(circuit, circuit.standing(when), { change, dead: true });
	const probe = { kind: "ohms", a: circuit.node(from)!, b: circuit.node(to)! } as const;
	const ohms = probeValue(point, probe);
	const value = Number.isNaN(ohms) ? ("open" as const) : ohms;
	const outside = !judge(sheet, [{ row: row.number, value }])[0]!.passes;
	if (!outside || value === "open") return { outside, apart: outside };
	// Ohms added are of a given size: they bring no scatter of their own.
	const added = new Set(change.branches.flatMap((one) => ("seriesOhms" in one ? [one.branch] : [])));
	let square = 0;
	for (const { branch, deviation } of sensitivity(point, probe).contributions)
		if (!added.has(branch)) square += deviation ** 2;
	const { low, high } = limits(value, Math.sqrt(square));
	return { outside, apart: low > (row.high ?? Number.POSITIVE_INFINITY) || high < row.low };
}
