/** The low-rank path against a full solve, for every branch of the demo car. */
import { describe, expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { Batch, type Evaluated, Kept } from "./batch.js";
import type { Change } from "./changes.js";
import { CircuitError } from "./error.js";

/** Largest accepted difference of a probe from a full solve, relative to the largest potential in play. */
const CLOSE = 1e-8;

const circuit = demoCar("main").circuit("converted");
const everywhere = circuit.nodes.map((_, a) => ({ kind: "volts" as const, a, b: -1 }));

/** A change under which a relay buzzes has no settled point: the full solve says so, and so must the quick one. */
function evaluated(work: () => Evaluated): Evaluated | CircuitError {
	try {
		return work();
	} catch (error) {
		if (error instanceof CircuitError) return error;
		throw error;
	}
}

function worst(batch: Batch, change: Change): { off: number; path: string; at: string } {
	const quick = evaluated(() => batch.evaluate(change));
	if (quick instanceof CircuitError) {
		expect(quick.message).toMatch(/does not settle/);
		expect(evaluated(() => batch.solveAnew(change))).toEqual(quick);
		return { off: 0, path: "solved", at: "" };
	}
	if (quick.path === "solved") return { off: 0, path: quick.path, at: "" };
	const full = batch.solveAnew(change);
	let off = 0;
	let at = "";
	quick.values.forEach((x, k) => {
		const y = full.values[k]!;
		const gap = Number.isNaN(x) !== Number.isNaN(y) ? Number.POSITIVE_INFINITY : Math.abs(x - y) / 15;
		if (gap > off) {
			off = gap;
			at = circuit.nodes[k]!;
		}
	});
	return { off, path: quick.path, at };
}

describe.each(["key-on", "actuators-on", "cranking"])("low-rank changes in %s", (condition) => {
	const batch = new Batch(new Kept(circuit, circuit.standing(condition)), everywhere);

	function compare(changes: Iterable<Change>): { count: number; quick: number } {
		let count = 0;
		let quick = 0;
		for (const change of changes) {
			const { off, path, at } = worst(batch, change);
			expect(off, `${JSON.stringify(change)} at ${at}`).toBeLessThan(CLOSE);
			count++;
			if (path !== "solved") quick++;
		}
		return { count, quick };
	}

	it("opens every third branch as a full solve does, mostly without one", () => {
		const changes = circuit.branches.flatMap((_, branch) =>
			branch % 3 === 0 ? [{ branches: [{ branch, siemens: 0 }], added: [] }] : [],
		);
		const { count, quick } = compare(changes);
		expect(quick / count).toBeGreaterThan(0.8);
	});

	it("adds resistance in series", () => {
		const changes = circuit.branches.flatMap((_, branch) =>
			branch % 5 === 0
				? [1, 30, 1000].map((seriesOhms) => ({ branches: [{ branch, seriesOhms }], added: [] }))
				: [],
		);
		compare(changes);
	});

	it("joins points", () => {
		const n = circuit.nodes.length;
		const changes: Change[] = [];
		for (let a = 0; a < n; a += 41)
			for (const b of [-1, (a * 7 + 13) % n])
				if (a !== b) changes.push({ branches: [], added: [{ a, b, siemens: 20 }] });
		compare(changes);
	});

	it("opens several branches at once", () => {
		const changes: Change[] = [];
		for (let k = 0; k + 400 < circuit.branches.length; k += 29)
			changes.push({
				branches: [k, k + 171, k + 333].map((branch, i) =>
					i === 1 ? { branch, seriesOhms: 50 } : { branch, siemens: 0 },
				),
				added: [],
			});
		compare(changes);
	});
});

it("names the parts that switch to and fro for ever as the full solve names them", () => {
	const batch = new Batch(new Kept(circuit, circuit.standing("lights-on")), []);
	let cycling = 0;
	circuit.branches.forEach((_, branch) => {
		for (const seriesOhms of [1, 30]) {
			const change: Change = { branches: [{ branch, seriesOhms }], added: [] };
			const quick = evaluated(() => batch.evaluate(change));
			if (!(quick instanceof CircuitError)) continue;
			cycling++;
			expect(evaluated(() => batch.solveAnew(change))).toEqual(quick);
		}
	});
	expect(cycling).toBeGreaterThan(0);
});
