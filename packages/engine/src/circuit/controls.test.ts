/** Looms with controlled sources: against a dense LU, in bands, under changes, in batches. */
import fc from "fast-check";
import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import type { Loom } from "../loom/index.js";
import { sensitivity } from "../readings/index.js";
import { Batch, Kept } from "./batch.js";
import type { Change } from "./changes.js";
import { Circuit, type Standing, type Topology } from "./circuit.js";
import { Condensed } from "./condense.js";
import { CircuitError } from "./error.js";
import { type Operating, operate } from "./operating.js";
import { branchAmps, type Probe, probeValue } from "./probes.js";
import { randomCircuit } from "./random-circuit.test-helper.js";
import { TETHER } from "./solver.js";

const sensor = fc.record({
	joints: fc.tuple(fc.nat(99), fc.nat(99), fc.nat(99)),
	percent: fc.integer({ min: 0, max: 100 }),
	ohms: fc.double({ min: 0, max: 4, noNaN: true }).map((power) => 10 ** power),
});

/** A random loom with some sensors put in, each pin by a wire to some joint. */
const controlled = fc
	.tuple(randomCircuit, fc.array(sensor, { minLength: 1, maxLength: 4 }))
	.map(([{ loom, when, joints }, sensors]) => {
		const text = { label: "", place: "", note: "" };
		const parts = new Map(loom.parts);
		const contacts = new Map(loom.contacts);
		const wires = new Map(loom.wires);
		const settings = new Map(loom.conditions.get(when)!.settings);
		sensors.forEach(({ joints: at, percent, ohms }, k) => {
			const id = `S${k}`;
			const values = { output_ohms: ohms };
			parts.set(id, { ...text, id, kind: "position sensor", duty: "", values, positions: [], marks: [] });
			settings.set(id, String(percent));
			["supply", "return", "signal"].forEach((role, pin) => {
				const contact = `${id}.${role}`;
				contacts.set(contact, {
					...text,
					id: contact,
					part: id,
					connector: "",
					cavity: "",
					role,
					values: {},
				});
				wires.set(`${id}-${role}`, {
					...wires.values().next().value!,
					id: `${id}-${role}`,
					from: { at: "contact", contact },
					to: { at: "joint", joint: joints[at[pin]! % joints.length]! },
				});
			});
		});
		const condition = { ...loom.conditions.get(when)!, settings };
		const own: Loom = { ...loom, parts, contacts, wires, conditions: new Map([[when, condition]]) };
		return { circuit: new Circuit(own), when };
	});

/** The point where there is one: sources may drive each other, which has its own error. */
function settled(circuit: Circuit, standing: Standing, change?: Change): Operating | undefined {
	try {
		return operate(circuit, standing, change ? { change } : {});
	} catch (error) {
		if (error instanceof CircuitError) return undefined;
		throw error;
	}
}

/** Potentials by a dense LU of the whole matrix, from the branches as they stand. */
function densely(point: Operating<Topology>): { volts: number[]; kappa: number } {
	const n = point.circuit.nodes.length;
	const a = Matrix.zeros(n, n);
	const r = Matrix.zeros(n, 1);
	const add = (i: number, j: number, x: number) => {
		if (i >= 0 && j >= 0) a.set(i, j, a.get(i, j) + x);
	};
	const acting = new Map(point.controls.map((control) => [control.branch, control]));
	point.circuit.branches.forEach((branch, k) => {
		const g = point.siemens[k]!;
		if (g === 0) return;
		const ends: [number, number][] = [
			[branch.a, 1],
			[branch.b, -1],
		];
		const follows = acting.get(k);
		for (const [i, si] of ends) {
			for (const [j, sj] of ends) add(i, j, si * sj * g);
			if (i >= 0) r.set(i, 0, r.get(i, 0) + si * g * point.standing.emf[k]!);
			if (follows === undefined) continue;
			add(i, follows.a, -si * g * follows.gain);
			add(i, follows.b, si * g * follows.gain);
		}
	});
	for (const node of point.components.first.slice(1)) add(node, node, TETHER);
	const lu = new LuDecomposition(a);
	const inverse = lu.solve(Matrix.eye(n));
	const most = (m: Matrix) => Math.max(...m.to2DArray().flat().map(Math.abs));
	return { volts: lu.solve(r).to1DArray(), kappa: n * most(a) * most(inverse) };
}

const RUNS = { seed: 21, numRuns: 150 };

it("agrees with a dense LU as far as that can be trusted", () => {
	let compared = 0;
	fc.assert(
		fc.property(controlled, ({ circuit, when }) => {
			const point = settled(circuit, circuit.standing(when));
			if (point === undefined || point.controls.length === 0) return;
			const { volts, kappa } = densely(point);
			if (kappa > 1e10) return;
			compared++;
			const size = Math.max(1, ...volts.map(Math.abs));
			volts.forEach((v, i) => {
				expect(Math.abs(point.volts[i]! - v), circuit.nodes[i]).toBeLessThan((1e-9 + 1e-15 * kappa) * size);
			});
		}),
		{ ...RUNS, numRuns: 70 },
	);
	expect(compared).toBeGreaterThan(25);
});

it("sources that drive each other so that no state is the only one are an error with their names", () => {
	fc.assert(
		fc.property(controlled, ({ circuit, when }) => {
			const standing = circuit.standing(when);
			const point = settled(circuit, standing);
			const [control] = point?.controls ?? [];
			if (point === undefined || control === undefined) return;
			// What one volt of the source does to the pair that it follows, all else dead and following nothing.
			const emf = new Float64Array(standing.emf.length);
			emf[control.branch] = 1;
			const seen = operate(circuit, { ...standing, emf, controls: [] }).volts;
			const share = (control.a < 0 ? 0 : seen[control.a]!) - (control.b < 0 ? 0 : seen[control.b]!);
			if (Math.abs(share) < 1e-3) return;
			const controls = [{ ...control, gain: 1 / share }];
			const { id } = circuit.branches[control.branch]!.owner;
			expect(() => operate(circuit, { ...standing, controls })).toThrow(
				`no single state: the sources of ${id} drive each other`,
			);
		}),
		RUNS,
	);
});

it("solves the transpose: y . (A^-1 r) = (A^-T y) . r", () => {
	fc.assert(
		fc.property(controlled, ({ circuit, when }) => {
			const point = settled(circuit, circuit.standing(when));
			if (point === undefined) return;
			const r = Float64Array.from(circuit.nodes, (_, i) => Math.cos(i));
			const y = Float64Array.from(circuit.nodes, (_, i) => Math.sin(3 * i));
			const dot = (u: Float64Array, v: Float64Array) => u.reduce((sum, t, i) => sum + t * v[i]!, 0);
			const x = point.solve(r.slice());
			const z = point.solveTransposed(y.slice());
			const size = dot(y.map(Math.abs), x.map(Math.abs)) + dot(z.map(Math.abs), r.map(Math.abs));
			expect(Math.abs(dot(y, x) - dot(z, r))).toBeLessThanOrEqual(1e-9 * size);
		}),
		RUNS,
	);
});

describe("what a probe's value does when one branch changes a little", () => {
	const STEP = 1e-5;
	it("is what the adjoint says, of voltages and currents", () => {
		let compared = 0;
		fc.assert(
			fc.property(controlled, fc.nat(), fc.nat(), fc.boolean(), ({ circuit, when }, p, q, amps) => {
				const standing = circuit.standing(when);
				const point = settled(circuit, standing);
				if (point === undefined || point.controls.length === 0) return;
				const { branch } = point.controls[p % point.controls.length]!;
				const { a, b } = circuit.branches[branch]!;
				const probe: Probe = amps
					? { kind: "amps", branches: [{ branch, sign: 1 }] }
					: { kind: "volts", a, b };
				const known = new Map(
					sensitivity(point, probe).contributions.map((own) => [own.branch, own.deviation]),
				);
				const varied = q % circuit.branches.length;
				const g = point.siemens[varied]!;
				const { spread, emfSpread } = circuit.branches[varied]!;
				if (g === 0 || emfSpread > 0 || varied === branch) return;
				const at = (factor: number) => {
					const siemens = standing.siemens.slice();
					siemens[varied]! *= factor;
					return probeValue(operate(circuit, { ...standing, siemens }), probe);
				};
				const slope = (at(1 + STEP) - at(1 - STEP)) / (2 * STEP);
				compared++;
				const size = Math.max(1, ...point.volts.map(Math.abs)) * (amps ? point.siemens[branch]! : 1);
				expect(Math.abs((known.get(varied) ?? 0) - Math.abs(slope) * spread)).toBeLessThan(
					1e-4 * Math.abs(slope) * spread + 1e-8 * size,
				);
			}),
			{ ...RUNS, numRuns: 250 },
		);
		expect(compared).toBeGreaterThan(60);
	});
});

it("the output's own scatter: of its share by what it follows, of its current", () => {
	fc.assert(
		fc.property(controlled, fc.boolean(), ({ circuit, when }, amps) => {
			const standing = circuit.standing(when);
			const point = settled(circuit, standing);
			if (point === undefined || point.controls.length === 0) return;
			const own = point.controls[0]!;
			const { branch } = own;
			const { a, b, spread } = circuit.branches[branch]!;
			const probe: Probe = amps ? { kind: "amps", branches: [{ branch, sign: 1 }] } : { kind: "volts", a, b };
			const at = (by: { g?: number; gain?: number }) => {
				const siemens = standing.siemens.slice();
				siemens[branch]! *= 1 + (by.g ?? 0);
				const controls = standing.controls.map((c) =>
					c.branch === branch ? { ...c, gain: c.gain + (by.gain ?? 0) } : c,
				);
				return probeValue(operate(circuit, { ...standing, siemens, controls }), probe);
			};
			const step = 1e-5;
			const byOhms = ((at({ g: step }) - at({ g: -step })) / (2 * step)) * spread;
			const byGain = ((at({ gain: step }) - at({ gain: -step })) / (2 * step)) * own.gainSpread;
			const found = sensitivity(point, probe).contributions.find((c) => c.branch === branch)?.deviation ?? 0;
			const size = Math.max(1, ...point.volts.map(Math.abs)) * (amps ? point.siemens[branch]! : 1);
			const expected = Math.hypot(byOhms, byGain);
			expect(Math.abs(found - expected)).toBeLessThan(1e-4 * expected + 1e-8 * size);
		}),
		RUNS,
	);
});

it("changes, and batches of them, of the loom and of it condensed, are what a solve anew gives", () => {
	fc.assert(
		fc.property(controlled, fc.nat(), fc.boolean(), ({ circuit, when }, pick, opens) => {
			const standing = circuit.standing(when);
			const branch = pick % circuit.branches.length;
			const change: Change = {
				branches: [opens ? { branch, siemens: 0 } : { branch, seriesOhms: 30 }],
				added: [],
			};
			const anew = settled(circuit, standing, change);
			if (anew === undefined || settled(circuit, standing) === undefined) return;
			const nodes = [...circuit.loom.contacts.keys()].map((id) => circuit.node(id)!);
			const probes = nodes.map((a): Probe => ({ kind: "volts", a, b: -1 }));
			const expected = probes.map((probe) => probeValue(anew, probe));
			const net = new Condensed(circuit, new Set(nodes));
			const found = [
				new Batch(new Kept(circuit, standing), probes).evaluate(change),
				new Batch(
					new Kept(net, net.standing(when)),
					probes.map((probe) => net.probe(probe)),
				).evaluate(net.change(change)),
			];
			const size = Math.max(1, ...anew.volts.map(Math.abs));
			for (const { values } of found)
				values.forEach((v, p) => {
					expect(Number.isNaN(v)).toBe(Number.isNaN(expected[p]));
					if (!Number.isNaN(v)) expect(Math.abs(v - expected[p]!)).toBeLessThan(1e-8 * size);
				});
		}),
		RUNS,
	);
});

it("currents add up at every point, those of the outputs among them", () => {
	fc.assert(
		fc.property(controlled, ({ circuit, when }) => {
			const point = settled(circuit, circuit.standing(when));
			if (point === undefined) return;
			let power = 0;
			let size = 1e-12;
			circuit.branches.forEach(({ a, b }, k) => {
				const across = (a < 0 ? 0 : point.volts[a]!) - (b < 0 ? 0 : point.volts[b]!);
				power += across * branchAmps(point, k);
				size += point.siemens[k]! * across ** 2 + Math.abs(across * point.siemens[k]! * point.emf[k]!);
			});
			expect(Math.abs(power)).toBeLessThan(1e-8 * size);
		}),
		RUNS,
	);
});
