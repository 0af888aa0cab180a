/**
 * Warm wires against published figures: a load behind two long wires in warmer air (reference/electrical/networks.json,
 * N22 and N23), resistance at a temperature (vdrop-examples.csv, V13), a derated wire at its highest current (V10, V11).
 */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { openCar } from "../car.js";
import type { Circuit } from "../circuit/index.js";
import { heatWires, operateWarm, voltsAt } from "../circuit/index.js";
import { wireOhms } from "../units/index.js";
import { reference } from "../units/reference.test-helper.js";
import { awgMm2 } from "../units/size.js";

interface Network {
	readonly id: string;
	readonly parts: readonly { readonly name: string; readonly volts?: number; readonly ohms?: number }[];
	readonly answers: readonly { readonly of: readonly string[]; readonly value: number }[];
}

const file = new URL("../../../../reference/electrical/networks.json", import.meta.url);
const networks = JSON.parse(readFileSync(file, "utf8")) as Network[];
const network = (id: string) => networks.find((n) => n.id === id)!;
const part = (id: string, name: string) => network(id).parts.find((p) => p.name === name)!;

const example = (id: string) => {
	const row = reference("vdrop-examples").find((r) => r.id === id)!;
	return { inputs: JSON.parse(row.inputs!) as Record<string, number>, computed: Number(row.computed) };
};

/** A battery, a load, a wire OUT and a wire BACK alike. */
function car(volts: number, loadOhms: number, awg: number, metres: number): Circuit {
	return openCar({
		"parts.csv": `part,kind,values\nBAT,battery,volts=${volts}; ohms=0.000001\nLOAD,resistor,ohms=${loadOhms}`,
		"contacts.csv": "contact,part,role\nBAT.+,BAT,+\nBAT.-,BAT,-\nLOAD.1,LOAD,a\nLOAD.2,LOAD,b",
		"wires.csv": `wire,from,to,size,length\nOUT,BAT.+,LOAD.1,${awg} AWG,${metres}\nBACK,LOAD.2,BAT.-,${awg} AWG,${metres}`,
		"conditions.csv": "condition,subject,state\non,BAT,on",
	}).circuit("delivered");
}

it.each([
	["N22", 20],
	["N23", 35],
])("%s: wires at %d degrees C", (id, ambientCelsius) => {
	// A thin gauge, for 15 ohm must fit into the 100 m that a wire may have; its 53 mA do not warm it.
	const metres = part("N22", "R1").ohms! / wireOhms({ mm2: awgMm2(30), metres: 1 }).ohms;
	const circuit = car(part(id, "V1").volts!, part(id, "R2").ohms!, 30, metres);
	const { volts } = operateWarm(circuit, "on", { ambientCelsius });
	const at = (contact: string) => voltsAt(volts, circuit.node(contact)!);
	const points: Record<string, string> = { "1": "BAT.+", "2": "LOAD.1", "3": "LOAD.2", "0": "BAT.-" };
	for (const { of, value } of network(id).answers) {
		const [one = "", two = "0"] = of;
		// Half a unit of the last digit printed.
		const digit = value === 12.5 ? 0.05 : 0.005;
		expect(Math.abs(at(points[one]!) - at(points[two]!) - value)).toBeLessThanOrEqual(digit);
	}
	expect(network(id).answers.length).toBeGreaterThanOrEqual(2);
});

it("V13: a conductor at 182 degrees C has the ohms of one longer by the circular's factor", () => {
	const { inputs, computed } = example("V13");
	const heated = heatWires(car(12, 1e6, 10, 5), "on", { ambientCelsius: inputs.T2_C! });
	const cool = wireOhms({ mm2: awgMm2(10), metres: 5 }).ohms;
	expect(heated.ohms.get("OUT")! / cool / (inputs.L1_ft! / computed)).toBeCloseTo(1, 3);
});

// 47 A in free air and 26 A at 20000 ft among 8 wires bring 14 AWG to 200 degrees C in air of 50. Our rated currents
// come from another table, at 90 degrees C: the rise of 150 K is met within 8 %.
it("V10, V11: free air, altitude, and altitude with bundle come to the same temperature", () => {
	const { inputs, computed } = example("V10");
	const { free_air_A: free = 0, altitude_factor: high = 0, bundle_factor: bundle = 0 } = inputs;
	const rise = (amps: number, derate: number) => {
		const ambientCelsius = inputs.ambient_C!;
		const circuit = car(60, 60 / amps, inputs.size!, 0.01);
		const { celsius, settled } = heatWires(circuit, "on", { ambientCelsius, derate });
		expect(settled).toBe(true);
		return celsius.get("OUT")! - ambientCelsius;
	};
	const published = inputs.conductor_rating_C! - inputs.ambient_C!;
	for (const [amps, derate] of [
		[free, 1],
		[example("V11").computed, high],
		[computed, high * bundle],
	] as const)
		expect(Math.abs(rise(amps, derate) / published - 1)).toBeLessThan(0.08);
	expect(rise(free, high)).toBeGreaterThan(1.2 * rise(free, 1));
});
