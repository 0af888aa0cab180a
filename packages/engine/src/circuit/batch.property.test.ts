/** The low-rank path against a full solve on small random looms, where parts come loose and join at every turn. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { Batch, Kept } from "./batch.js";
import type { Change } from "./changes.js";
import { Circuit } from "./circuit.js";
import { picks, randomCircuit } from "./random-circuit.test-helper.js";

/** Of the largest value of its sort under the change. */
const CLOSE = 1e-7;

const what = fc.constantFrom("open", "series", "join");
const changes = fc.array(fc.tuple(what, picks), { minLength: 1, maxLength: 4 });

it.each([false, true])("any few changes, sources dead: %s", (dead) => {
	fc.assert(
		fc.property(randomCircuit, changes, (drawn, list) => {
			const circuit = new Circuit(drawn.loom);
			const count = circuit.branches.length;
			const nodes = circuit.nodes.length;
			const change: { branches: Change["branches"][number][]; added: Change["added"][number][] } = {
				branches: [],
				added: [],
			};
			for (const [sort, [p, q, r]] of list) {
				const branch = p % count;
				const a = q % nodes;
				const b = (r % (nodes + 1)) - 1;
				if (sort === "join") {
					if (a !== b) change.added.push({ a, b, siemens: 20 });
				} else if (!change.branches.some((c) => c.branch === branch))
					change.branches.push(
						sort === "open" ? { branch, siemens: 0 } : { branch, seriesOhms: 10 ** ((q % 5) - 1) },
					);
			}
			const kind = dead ? ("ohms" as const) : ("volts" as const);
			const probes = circuit.nodes.flatMap((_, a) => [-1, (a * 7 + 3) % nodes].map((b) => ({ kind, a, b })));
			const batch = new Batch(new Kept(circuit, circuit.standing(drawn.when), dead), probes);
			const quick = batch.evaluate(change);
			const full = batch.solveAnew(change);
			const size = Math.max(...[...full.values].filter((x) => !Number.isNaN(x)).map(Math.abs), 1e-3);
			quick.values.forEach((x, k) => {
				const y = full.values[k]!;
				expect(Number.isNaN(x)).toBe(Number.isNaN(y));
				if (!Number.isNaN(x)) expect(Math.abs(x - y)).toBeLessThanOrEqual(CLOSE * size);
			});
		}),
		{ seed: 21, numRuns: 300 },
	);
});
