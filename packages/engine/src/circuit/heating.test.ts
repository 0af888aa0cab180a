import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCar } from "../car.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { bundleShare, ratedAmps, wireOhms, wireRise } from "../units/index.js";
import { Circuit } from "./circuit.js";
import { type HeatOptions, heatWires, operateWarm } from "./heating.js";
import { branchAmps } from "./probes.js";
import { randomCircuit } from "./random-circuit.test-helper.js";

interface Bench {
	/** Volts of the source. */
	readonly volts?: number;
	/** Ohms in series with the wire under test. */
	readonly ohms: number;
	readonly mm2?: number;
	readonly metres?: number;
	/** Further loaded wires alike in its bundle. */
	readonly others?: number;
}

/** A battery, a resistor and the wire W between them in bundle `run`; the way back is too thick to count. */
function bench({ volts = 12, ohms, mm2 = 1, metres = 1, others = 0 }: Bench): Circuit {
	const loads = ["", ...Array.from({ length: others }, (_, k) => `${k + 1}`)];
	return openCar({
		"parts.csv": [
			"part,kind,values",
			`BAT,battery,volts=${volts}; ohms=0.000001`,
			...loads.map((k) => `R${k},resistor,ohms=${ohms}`),
		].join("\n"),
		"contacts.csv": [
			"contact,part,role",
			"BAT.+,BAT,+",
			"BAT.-,BAT,-",
			...loads.flatMap((k) => [`R${k}.1,R${k},a`, `R${k}.2,R${k},b`]),
		].join("\n"),
		"wires.csv": [
			"wire,from,to,size,length,bundle",
			...loads.flatMap((k) => [`W${k},BAT.+,R${k}.1,${mm2},${metres},run`, `B${k},R${k}.2,BAT.-,240,1 mm,`]),
		].join("\n"),
		"conditions.csv": "condition,subject,state\non,BAT,on",
	}).circuit("delivered");
}

const warm = (what: Bench, options: Partial<HeatOptions> = {}) => {
	const heated = heatWires(bench(what), "on", { ambientCelsius: 30, ...options });
	return { ...heated, t: heated.celsius.get("W")!, a: heated.amps.get("W")!, r: heated.ohms.get("W")! };
};

describe("one wire", () => {
	// Fed by a large resistance its current stays: t = air + c (1 + alpha (t - 20)), a straight line in t.
	it.each([10, 20, 30, 35])("at a held %d A comes to the closed form", (amps) => {
		const { settled, t, a } = warm({ volts: 60, ohms: 60 / amps, mm2: 1, metres: 0.01 });
		const c = wireRise(a, ratedAmps(1), 20);
		expect(settled).toBe(true);
		expect(t).toBeCloseTo((30 + c * (1 - 20 * 0.00393)) / (1 - c * 0.00393), 2);
	});

	it("at its rated current it is rated warm, and its resistance that of the warm conductor", () => {
		const { t, r, a } = warm({ volts: 60, ohms: 60 / ratedAmps(1) - 0.005, metres: 0.1 });
		expect(Math.abs(a / ratedAmps(1) - 1)).toBeLessThan(0.01);
		expect(Math.abs(t - 90)).toBeLessThan(1);
		expect(r).toBeCloseTo(wireOhms({ mm2: 1, metres: 0.1, celsius: t }).ohms, 12);
	});

	it("at three times its rated current it has no steady temperature, and is named", () => {
		const hot = { volts: 60, ohms: 60 / (3 * ratedAmps(1)), metres: 0.01 };
		const { settled, overheated } = warm(hot);
		expect(settled).toBe(false);
		expect(overheated).toEqual(["W"]);
		expect(() => operateWarm(bench(hot), "on", { ambientCelsius: 30 })).toThrow(
			"no steady temperature: W would burn",
		);
	});

	// 12 V across 0.09 ohm cold would be 133 A; the warmer wire takes less than half, and so it holds below melting.
	it("that is most of its circuit saves itself", () => {
		const { settled, a, t, r } = warm({ ohms: 0.001, mm2: 1, metres: 5 });
		expect(settled).toBe(true);
		expect(t).toBeGreaterThan(400);
		expect(t).toBeLessThan(1000);
		expect(a).toBeLessThan(12 / wireOhms({ mm2: 1, metres: 5 }).ohms / 2);
		expect(Math.abs((a * r) / 12 - 1)).toBeLessThan(0.03);
	});

	it("without current is as warm as the air", () => {
		const { t, settled, rounds } = warm({ ohms: 1e8 }, { ambientCelsius: -20 });
		expect([settled, rounds]).toEqual([true, 1]);
		expect(t).toBeCloseTo(-20, 9);
	});
});

describe("bundle", () => {
	it("loaded wires are counted, idle ones are not", () => {
		const { perBundle, t } = warm({ ohms: 1.2, others: 11 });
		expect(perBundle).toEqual(new Map([["run", 12]]));
		const same = warm({ ohms: 1.2 }, { derate: bundleShare(12) });
		expect(Math.abs(t - same.t)).toBeLessThan(1);
		expect(warm({ ohms: 1000, others: 11 }).perBundle).toEqual(new Map());
	});

	it("a given count has the last word", () => {
		const [few, many] = [3, 41].map((n) => warm({ ohms: 1 }, { perBundle: new Map([["run", n]]) }));
		const rise = (t: number) => (t - 30) / (1 + 0.00393 * (t - 20));
		expect(rise(many!.t) / rise(few!.t)).toBeCloseTo(0.35 ** -2 * (many!.a / few!.a) ** 2, 3);
	});
});

it("hotter with more current, warmer air, fuller bundles, thinner air; cooler when thicker", () => {
	const draw = fc.record({
		ohms: fc.double({ min: 0.7, max: 100, noNaN: true }),
		mm2: fc.double({ min: 1, max: 50, noNaN: true }),
		metres: fc.double({ min: 0.1, max: 3, noNaN: true }),
	});
	fc.assert(
		fc.property(draw, fc.integer({ min: 4, max: 60 }), (what, wires) => {
			const base = warm(what);
			expect(base.settled).toBe(true);
			expect(warm({ ...what, ohms: what.ohms * 0.95 }).t).toBeGreaterThan(base.t);
			expect(warm(what, { ambientCelsius: 31 }).t).toBeGreaterThan(base.t);
			expect(warm(what, { perBundle: new Map([["run", wires]]) }).t).toBeGreaterThan(base.t);
			expect(warm(what, { derate: 0.91 }).t).toBeGreaterThan(base.t);
			expect(warm({ ...what, mm2: what.mm2 * 1.2 }).t).toBeLessThan(base.t);
		}),
		{ seed: 60228, numRuns: 40 },
	);
});

it("on random looms the temperatures repeat themselves, and what the sources give is what becomes heat", () => {
	let settledOnes = 0;
	fc.assert(
		fc.property(randomCircuit, ({ loom, when }) => {
			const circuit = new Circuit(loom);
			const { settled, celsius, amps, ohms, point } = heatWires(circuit, when, { ambientCelsius: 25 });
			if (!settled) return;
			settledOnes++;
			let given = 0;
			let heat = 0;
			circuit.branches.forEach((_, k) => {
				const a = branchAmps(point, k);
				if (point.siemens[k] === 0) return;
				heat += a ** 2 / point.siemens[k]!;
				given -= a * point.emf[k]!;
			});
			expect(Math.abs(heat - given)).toBeLessThanOrEqual(1e-9 * Math.max(heat, 1e-3));
			for (const wire of loom.wires.values()) {
				const t = celsius.get(wire.id)!;
				expect(t - 25).toBeCloseTo(wireRise(amps.get(wire.id)!, ratedAmps(wire.mm2), t), 3);
				expect(ohms.get(wire.id)).toBeCloseTo(wireOhms({ ...wire, celsius: t }).ohms, 5);
			}
		}),
		{ seed: 11, numRuns: 150 },
	);
	expect(settledOnes).toBeGreaterThan(100);
});

describe.each(["small", "main"] as const)("the %s demo car in air of 40 degrees C", (name) => {
	const circuit = demoCar(name).circuit("converted");
	it.each([...circuit.loom.conditions.keys()])("%s: every wire settles, none too hot", (condition) => {
		const { settled, overheated } = heatWires(circuit, condition, { ambientCelsius: 40 });
		expect(settled).toBe(true);
		// The starter's cables are made for seconds, not for a steady 200 A.
		if (condition !== "cranking") expect(overheated).toEqual([]);
		else for (const id of overheated) expect(circuit.loom.wires.get(id)!.mm2).toBeGreaterThanOrEqual(35);
	});
});

it("a change given has the last word; bad options are refused with what is right", () => {
	const circuit = bench({ ohms: 1 });
	const branch = circuit.branchesOf.get("W")!.find((k) => circuit.branches[k]!.owner.what === "wire")!;
	const change = { branches: [{ branch, siemens: 0 }], added: [] };
	expect(heatWires(circuit, "on", { ambientCelsius: 30, change }).celsius.get("W")).toBeCloseTo(30, 9);
	expect(() => heatWires(circuit, "on", { ambientCelsius: Number.NaN })).toThrow(
		"ambientCelsius is NaN; wanted: -60 to 200",
	);
	expect(() => heatWires(circuit, "on", { ambientCelsius: 20, derate: 0 })).toThrow(
		"derate is 0; wanted: 0.01 to 1",
	);
	expect(() => heatWires(circuit, "off", { ambientCelsius: 20 })).toThrow(/no condition 'off'/);
});
