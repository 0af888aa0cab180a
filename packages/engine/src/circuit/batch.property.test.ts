/** The low-rank path against a full solve on small random looms, where parts come loose and join at every turn. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { Batch, Kept } from "./batch.js";
import type { Change } from "./changes.js";
import { Circuit } from "./circuit.js";
import { picks, randomCircuit } from "./random-circuit.test-helper.js";

/** Of the largest value under the change, or of 1 V or 1 ohm. */
const CLOSE = 1e-7;

type Sort = "open" | "series" | "join";
const some = (sort: Sort, most: number) =>
	fc.array(
		picks.map((at) => [sort, at] as const),
		{ maxLength: most },
	);
/** One opening among added ohms, or several joinings among added ohms. */
const changes = fc
	.oneof(fc.tuple(some("open", 1), some("series", 3)), fc.tuple(some("join", 3), some("series", 2)))
	.map((lists) => lists.flat());

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
			const size = Math.max(...[...full.values].filter((x) => !Number.isNaN(x)).map(Math.abs), 1);
			quick.values.forEach((x, k) => {
				const y = full.values[k]!;
				expect(Number.isNaN(x)).toBe(Number.isNaN(y));
				if (!Number.isNaN(x)) expect(Math.abs(x - y)).toBeLessThanOrEqual(CLOSE * size);
			});
		}),
		{ seed: 21, numRuns: 200 },
	);
});
