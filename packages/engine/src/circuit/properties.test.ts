/** Theorems that hold in every network of conductances and sources, on small random looms. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { takeReading } from "../readings/index.js";
import { findBridges } from "./bridges.js";
import { Circuit, type Standing } from "./circuit.js";
import { type Operating, operate, separated, voltsAt } from "./operating.js";
import { branchAmps, probeValue } from "./probes.js";
import { picks, type RandomCircuit, randomCircuit } from "./random-circuit.test-helper.js";

const RUNS = { seed: 20, numRuns: 200 };
/** Of the largest term or potential. */
const CLOSE = 1e-9;

function opened({ loom, when }: RandomCircuit): { circuit: Circuit; standing: Standing } {
	const circuit = new Circuit(loom);
	return { circuit, standing: circuit.standing(when) };
}

const across = ({ circuit, volts }: Operating, k: number) => {
	const { a, b } = circuit.branches[k]!;
	return voltsAt(volts, a) - voltsAt(volts, b);
};
const most = (numbers: Iterable<number>) => Math.max(0, ...[...numbers].map(Math.abs));

/**
 * Sum of v x i over all branches, volts of one point and amperes of another, in units of what it may be off: a share
 * of the powers summed, and what the last digit of the largest potential drives through the conductances.
 */
function tellegen(volts: Operating, amps: Operating): number {
	let sum = 0;
	let size = 0;
	let rounding = 0;
	const highest = most(volts.volts) * most(amps.volts);
	volts.circuit.branches.forEach((_, k) => {
		const watts = across(volts, k) * branchAmps(amps, k);
		sum += watts;
		size += Math.abs(watts);
		rounding += amps.siemens[k]! * highest * Number.EPSILON;
	});
	return sum === 0 ? 0 : Math.abs(sum) / (CLOSE * size + 10 * rounding);
}

/** Transfer resistance: volts from c to d for one ampere into a and out of b, sources dead. */
function transferOhms(point: Operating, a: number, b: number, c: number, d: number): number {
	const x = new Float64Array(point.circuit.nodes.length);
	if (a >= 0) x[a]! += 1;
	if (b >= 0) x[b]! -= 1;
	point.solve(x);
	return voltsAt(x, c) - voltsAt(x, d);
}

// B. D. H. Tellegen, 'A general network theorem, with applications', Philips Res. Rep. 7, 1952.
describe("Tellegen's theorem", () => {
	it("the power of all branches, sources included, sums to nothing", () => {
		fc.assert(
			fc.property(randomCircuit, (drawn) => {
				const { circuit, standing } = opened(drawn);
				const point = operate(circuit, standing);
				expect(tellegen(point, point)).toBeLessThan(1);
			}),
			RUNS,
		);
	});

	it("volts of one network and amperes of another on the same graph do as well", () => {
		fc.assert(
			fc.property(randomCircuit, picks, (drawn, [one, two]) => {
				const { circuit, standing } = opened(drawn);
				const sound = operate(circuit, standing);
				const count = circuit.branches.length;
				const branches = [...new Set([one % count, two % count])].map((branch, k) =>
					k === 0 ? { branch, siemens: 0 } : { branch, seriesOhms: 7 },
				);
				const changed = operate(circuit, standing, { change: { branches, added: [] } });
				expect(tellegen(sound, changed)).toBeLessThan(1);
				expect(tellegen(changed, sound)).toBeLessThan(1);
			}),
			RUNS,
		);
	});
});

it("transfer resistances are reciprocal", () => {
	fc.assert(
		fc.property(randomCircuit, picks, (drawn, [a, b, c, d]) => {
			const { circuit, standing } = opened(drawn);
			const point = operate(circuit, standing, { dead: true });
			const [p, q, r, s] = [a, b, c, d].map((k) => (k % (circuit.nodes.length + 1)) - 1) as [
				number,
				number,
				number,
				number,
			];
			fc.pre(!separated(point, p, q) && !separated(point, r, s));
			const size = transferOhms(point, p, q, p, q) + transferOhms(point, r, s, r, s);
			const gap = transferOhms(point, p, q, r, s) - transferOhms(point, r, s, p, q);
			expect(Math.abs(gap)).toBeLessThanOrEqual(CLOSE * size);
		}),
		RUNS,
	);
});

it("what several sources do together is the sum of what each does alone", () => {
	fc.assert(
		fc.property(randomCircuit, (drawn) => {
			const { circuit, standing } = opened(drawn);
			const sources = [...standing.emf.keys()].filter((k) => standing.emf[k] !== 0);
			fc.pre(sources.length >= 2);
			const together = operate(circuit, standing);
			const alone = sources.map((source) => {
				const branches = sources
					.filter((k) => k !== source)
					.map((branch) => ({ branch, siemens: standing.siemens[branch]!, emf: 0 }));
				return operate(circuit, standing, { change: { branches, added: [] } });
			});
			const size = most(alone.flatMap((point) => [...point.volts]));
			together.volts.forEach((volts, node) => {
				const sum = alone.reduce((total, point) => total + point.volts[node]!, 0);
				expect(Math.abs(volts - sum)).toBeLessThanOrEqual(CLOSE * size);
			});
		}),
		RUNS,
	);
});

it("all resistances k times as large: ohms k times as large, volts as before, amperes a k-th", () => {
	fc.assert(
		fc.property(randomCircuit, picks, fc.constantFrom(0.01, 3, 1000), (drawn, [one, two], k) => {
			const { circuit, standing } = opened(drawn);
			const branches = [...standing.siemens].map((siemens, branch) => ({ branch, siemens: siemens / k }));
			const change = { branches, added: [] };
			const before = operate(circuit, standing);
			const after = operate(circuit, standing, { change });
			const size = most(before.volts);
			before.volts.forEach((volts, node) => {
				expect(Math.abs(after.volts[node]! - volts)).toBeLessThanOrEqual(CLOSE * size);
			});
			const currents = circuit.branches.map((_, branch) => branchAmps(before, branch));
			const flow = most(currents);
			currents.forEach((amps, branch) => {
				// Amperes along a wire are a small difference of volts: as many digits as that leaves.
				const lost = standing.siemens[branch]! * size * 1e-12;
				expect(Math.abs(branchAmps(after, branch) * k - amps)).toBeLessThanOrEqual(CLOSE * flow + lost);
			});
			const probe = { kind: "ohms" as const, a: one % circuit.nodes.length, b: two % circuit.nodes.length };
			const ohms = probeValue(operate(circuit, standing, { dead: true }), probe);
			const scaled = probeValue(operate(circuit, standing, { dead: true, change }), probe);
			expect(Number.isNaN(scaled)).toBe(Number.isNaN(ohms));
			if (!Number.isNaN(ohms)) expect(Math.abs(scaled - k * ohms)).toBeLessThanOrEqual(CLOSE * k * ohms);
		}),
		RUNS,
	);
});

describe("bridges", () => {
	it("opening one changes no difference on either side", () => {
		fc.assert(
			fc.property(randomCircuit, fc.nat(), (drawn, pick) => {
				const { circuit, standing } = opened(drawn);
				const bridges = findBridges(circuit, standing.siemens);
				const all = [...bridges.is.keys()].filter((k) => bridges.is[k] === 1);
				fc.pre(all.length > 0);
				const branch = all[pick % all.length]!;
				const before = operate(circuit, standing);
				const after = operate(circuit, standing, {
					change: { branches: [{ branch, siemens: 0 }], added: [] },
				});
				const size = most(before.volts);
				const { a, b } = circuit.branches[branch]!;
				expect(separated(before, a, b)).toBe(false);
				expect(separated(after, a, b)).toBe(true);
				let worst = 0;
				let misjudged = 0;
				for (let p = -1; p < circuit.nodes.length; p++)
					for (let q = -1; q < p; q++) {
						if (separated(before, p, q)) continue;
						const apart = separated(after, p, q);
						if (bridges.separates(branch, p, q) !== apart) misjudged++;
						if (apart) continue;
						const was = voltsAt(before.volts, p) - voltsAt(before.volts, q);
						const is = voltsAt(after.volts, p) - voltsAt(after.volts, q);
						worst = Math.max(worst, Math.abs(is - was));
					}
				expect(misjudged).toBe(0);
				expect(worst).toBeLessThanOrEqual(CLOSE * size);
			}),
			{ ...RUNS, numRuns: 60 },
		);
	});

	it("opening any other branch separates nothing", () => {
		fc.assert(
			fc.property(randomCircuit, (drawn) => {
				const { circuit, standing } = opened(drawn);
				const { is } = findBridges(circuit, standing.siemens);
				circuit.branches.forEach(({ a, b }, branch) => {
					if (standing.siemens[branch] === 0) return;
					const change = { branches: [{ branch, siemens: 0 }], added: [] };
					expect(separated(operate(circuit, standing, { change, dead: true }), a, b)).toBe(is[branch] === 1);
				});
			}),
			{ ...RUNS, numRuns: 60 },
		);
	});
});

/** Joints that conducting parts and wires of the loom lead to from one joint, by a walk over the loom itself. */
function reached({ loom, when }: RandomCircuit, from: string): Set<string> {
	const settings = loom.conditions.get(when)!.settings;
	const steps: [string, string][] = [];
	const jointOf = (wire: string, end: "from" | "to") => {
		const place = loom.wires.get(wire)![end];
		return place.at === "joint" ? place.joint : "";
	};
	for (const part of loom.parts.values())
		if (settings.get(part.id) !== "off")
			steps.push([jointOf(`${part.id}-W1`, "to"), jointOf(`${part.id}-W2`, "to")]);
	for (const wire of loom.wires.keys())
		if (wire.startsWith("L")) steps.push([jointOf(wire, "from"), jointOf(wire, "to")]);
	const grounds = [...loom.joints.values()].filter(({ kind }) => kind === "ground").map(({ id }) => id);
	for (const ground of grounds) steps.push([ground, grounds[0]!]);
	const found = new Set([from]);
	for (let size = 0; size !== found.size; ) {
		size = found.size;
		for (const [a, b] of steps) {
			if (found.has(a)) found.add(b);
			if (found.has(b)) found.add(a);
		}
	}
	return found;
}

it("a meter reads open exactly where no conducting way leads from lead to lead", () => {
	fc.assert(
		fc.property(randomCircuit, (drawn) => {
			const { circuit } = opened(drawn);
			const live = [...drawn.loom.parts.values()].some(
				({ id, kind }) =>
					kind === "battery" && drawn.loom.conditions.get(drawn.when)!.settings.get(id) === "on",
			);
			for (const from of drawn.joints) {
				const way = reached(drawn, from);
				for (const to of drawn.joints) {
					const what = live ? "volts" : "ohms";
					const reading = takeReading(circuit, { what, from, to, when: drawn.when });
					expect(reading.open).toBe(!way.has(to));
					expect(reading.value === undefined).toBe(reading.open);
				}
			}
		}),
		{ ...RUNS, numRuns: 60 },
	);
});

// Lord Rayleigh, 'On the theory of resonance', 1871: more conductance never means more resistance.
it("a conductor added nowhere raises the ohms between two points", () => {
	fc.assert(
		fc.property(randomCircuit, picks, (drawn, [a, b, c, d]) => {
			const { circuit, standing } = opened(drawn);
			const n = circuit.nodes.length;
			fc.pre(a % n !== b % n);
			const probe = { kind: "ohms" as const, a: c % n, b: d % n };
			const before = probeValue(operate(circuit, standing, { dead: true }), probe);
			fc.pre(!Number.isNaN(before));
			const change = { branches: [], added: [{ a: a % n, b: b % n, siemens: 2 }] };
			const after = probeValue(operate(circuit, standing, { dead: true, change }), probe);
			expect(after).toBeLessThanOrEqual(before * (1 + CLOSE));
		}),
		RUNS,
	);
});
