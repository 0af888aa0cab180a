/** A sound demo car sets no code and every function of it works: by full solves of the network. */
import { describe, expect, it } from "vitest";
import { type Circuit, operate, type Probe, probeValue } from "../circuit/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { monitorSeen, needSeen, type Seen } from "./quantities.js";

function numberOf(circuit: Circuit, { when, terms }: Seen): number {
	const point = operate(circuit, circuit.standing(when));
	const value = (probe: Probe) => probeValue(point, probe);
	return terms.reduce((sum, { probe, factor }) => sum + factor * value(probe), 0);
}

describe.each(["small", "main"] as const)("the %s demo car", (name) => {
	describe.each(["delivered", "converted"] as const)("%s", (which) => {
		const circuit = demoCar(name).circuit(which);
		const within = (seen: Seen, low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY) => {
			const value = numberOf(circuit, seen);
			return value >= low && value <= high;
		};

		it("sets no code", () => {
			const { monitors } = circuit.loom;
			expect(monitors.length).toBeGreaterThan(0);
			const set = monitors.filter((monitor) => {
				const seen = monitorSeen(circuit, monitor);
				return seen && !within(seen, monitor.below, monitor.above);
			});
			expect(set.map(({ code }) => code)).toEqual([]);
		});

		it("does all it must", () => {
			const { functions } = circuit.loom;
			expect(functions.length).toBeGreaterThan(0);
			const failed = functions.filter((need) => {
				const seen = needSeen(circuit, need);
				return !seen || !within(seen, need.low, need.high);
			});
			expect(failed.map((need) => need.function)).toEqual([]);
		});
	});
});
