import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forbidden, takeReading } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { Circuit } from "./circuit.js";
import { operate, separated } from "./operating.js";
import { randomCircuit } from "./random-circuit.test-helper.js";
import { resistanceMatrix } from "./resistance.js";

describe("resistances between every two of some points", () => {
	it("are those that the meter shows one by one", () => {
		const circuit = demoCar("main").circuit("converted");
		const contacts = [...circuit.loom.contacts.keys()].filter((id) => !forbidden(circuit.loom, id));
		const some = contacts.filter((_, k) => k % 16 === 0);
		const point = operate(circuit, circuit.standing("battery-off"), { dead: true });
		const ohms = resistanceMatrix(
			point,
			some.map((id) => circuit.node(id)!),
		);
		let open = 0;
		some.forEach((from, i) => {
			some.forEach((to, j) => {
				if (j <= i) return;
				const { value } = takeReading(circuit, { what: "ohms", from, to, when: "battery-off" });
				const own = ohms[i * some.length + j]!;
				if (value === undefined) {
					open++;
					expect(Number.isNaN(own) || own > 1e6, `${from} to ${to}`).toBe(true);
				} else expect(Math.abs(own / value - 1), `${from} to ${to}`).toBeLessThan(1e-9);
			});
		});
		expect(open).toBeGreaterThan(0);
		expect(open).toBeLessThan((some.length * some.length) / 4);
	});

	it("are a distance: symmetric, zero to itself, no way round is shorter; open where nothing joins", () => {
		fc.assert(
			fc.property(randomCircuit, (drawn) => {
				const circuit = new Circuit(drawn.loom);
				const point = operate(circuit, circuit.standing(drawn.when), { dead: true });
				const nodes = [-1, ...circuit.nodes.keys()];
				const m = nodes.length;
				const ohms = resistanceMatrix(point, nodes);
				const at = (i: number, j: number) => ohms[i * m + j]!;
				for (let i = 0; i < m; i++) {
					expect(at(i, i)).toBe(0);
					for (let j = 0; j < i; j++) {
						expect(Object.is(at(i, j), at(j, i))).toBe(true);
						expect(Number.isNaN(at(i, j))).toBe(separated(point, nodes[i]!, nodes[j]!));
						const k = (i * 7 + j * 3) % m;
						if (Number.isNaN(at(i, j)) || Number.isNaN(at(i, k))) continue;
						expect(at(i, j)).toBeLessThanOrEqual((at(i, k) + at(k, j)) * (1 + 1e-9));
					}
				}
			}),
			{ seed: 5, numRuns: 60 },
		);
	});
});
