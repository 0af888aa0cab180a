/** How far what an automaton looks at may move before it answers otherwise, for every automaton of the demo cars. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import type { AutomatonSpec } from "./types.js";

const specs = ["small", "main"].flatMap((name) =>
	(["delivered", "converted"] as const).flatMap((which): AutomatonSpec[] => {
		const circuit = demoCar(name as "small" | "main").circuit(which);
		const conditions = [...circuit.loom.conditions.keys()];
		return conditions.flatMap((condition) => circuit.standing(condition).automata.map(({ spec }) => spec));
	}),
);
/** One of each: same part's kind of element, states and watches. */
const kinds = [...new Map(specs.map((spec) => [`${spec.element} ${spec.states}`, spec])).values()];

test("within its slack no automaton answers otherwise", () => {
	expect(kinds.length).toBeGreaterThan(20);
	const volts = fc.array(fc.double({ min: -15, max: 15, noNaN: true }), { minLength: 6, maxLength: 6 });
	const moves = fc.array(fc.double({ min: -0.999, max: 0.999, noNaN: true }), { minLength: 6, maxLength: 6 });
	fc.assert(
		fc.property(fc.constantFrom(...kinds), fc.nat(), volts, moves, (spec, any, from, by) => {
			const state = any % spec.states.length;
			const at = spec.watch.map((_, k) => from[k % from.length]!);
			const slack = spec.slack(state, at);
			const moved = at.map((v, k) => v + Math.min(slack[k]!, 100) * by[k % by.length]!);
			expect(spec.next(state, moved)).toBe(spec.next(state, at));
		}),
		{ seed: 11, numRuns: 3000 },
	);
});

test("the slack is no smaller than it need be where one difference decides", () => {
	for (const spec of kinds) {
		if (spec.watch.length !== 1) continue;
		spec.states.forEach((_, state) => {
			const [slack = Number.NaN] = spec.slack(state, [1]);
			const answers = [1 - 1.001 * slack, 1 + 1.001 * slack].map((v) => spec.next(state, [v]));
			const own = spec.next(state, [1]);
			expect(
				answers.some((answer) => answer !== own),
				`${spec.part} ${spec.element}`,
			).toBe(true);
		});
	}
});
