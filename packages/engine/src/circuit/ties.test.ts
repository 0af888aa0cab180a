import fc from "fast-check";
import { expect, it } from "vitest";
import { Circuit } from "./circuit.js";
import { components } from "./components.js";
import { operate } from "./operating.js";
import { randomCircuit } from "./random-circuit.test-helper.js";
import type { Term } from "./term.js";
import { Ties } from "./ties.js";

/** Names of the points of each part, in order. */
const named = (parts: readonly Iterable<number>[]) =>
	parts.map((part) => [...part].sort((x, y) => x - y)).sort();

it("finds what several openings together cut off, as counting components does", () => {
	let cut = 0;
	fc.assert(
		fc.property(
			randomCircuit,
			fc.array(fc.nat(), { minLength: 2, maxLength: 5 }),
			({ loom, when }, picks) => {
				const circuit = new Circuit(loom);
				const point = operate(circuit, circuit.standing(when));
				const conducting = [...circuit.branches.keys()].filter((k) => point.siemens[k] !== 0);
				const opened = [...new Set(picks.map((pick) => conducting[pick % conducting.length]!))];
				if (opened.length < 2) return;
				const siemens = point.siemens.slice();
				const terms = opened.map((branch): Term => {
					const { a, b } = circuit.branches[branch]!;
					const before = siemens[branch]!;
					siemens[branch] = 0;
					return { a, b, dg: -before, dh: 0, branch, before, after: 0, emf: 0, shift: undefined };
				});
				const ties = new Ties(point);
				const after = components(circuit, siemens);
				const parts = new Map<number, number[]>();
				after.of.forEach((part, node) => {
					if (part !== 0) parts.set(part, [...(parts.get(part) ?? []), node]);
				});
				const loose = [...parts.values()].filter(
					(part) =>
						part.every((node) => ties.held[node] === 0) &&
						terms.some(({ a, b }) => part.includes(a) || part.includes(b)),
				);
				cut += loose.length;
				expect(named(ties.loose(terms, siemens))).toEqual(named(loose));
				// Asked again, with nothing open any more, all is tied.
				expect(ties.loose(terms, point.siemens)).toEqual([]);
			},
		),
		{ numRuns: 300, seed: 7 },
	);
	expect(cut).toBeGreaterThan(100);
});
