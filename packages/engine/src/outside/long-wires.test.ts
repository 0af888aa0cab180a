/**
 * A load behind two long wires, from a handbook (reference/electrical/networks.json, N22 and N23), with real wires:
 * gauge and length in the tables. The tables give no temperature: wires stand at 20 degrees C, so warmer ones are
 * given as much more length as copper gains in resistance (reference/electrical/material-constants.csv).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCar } from "../car.js";
import { type Reading, takeReading } from "../readings/index.js";
import { wireOhms } from "../units/index.js";
import { reference } from "../units/reference.test-helper.js";
import { awgMm2 } from "../units/size.js";

interface Example {
	readonly id: string;
	readonly parts: readonly { readonly name: string; readonly volts?: number; readonly ohms?: number }[];
	readonly answers: readonly { readonly of: readonly string[]; readonly value: number }[];
}

const file = new URL("../../../../reference/electrical/networks.json", import.meta.url);
const examples = JSON.parse(readFileSync(file, "utf8")) as Example[];
const example = (id: string) => examples.find((e) => e.id === id)!;
const ohmsOf = (id: string, name: string) => example(id).parts.find((part) => part.name === name)!.ohms!;
const answer = (id: string, of: string) => example(id).answers.find((a) => a.of.join("-") === of)!.value;

/** A thin gauge, for 15 ohm must fit into the 100 m that a wire may have. */
const GAUGE = 30;
const OHMS_PER_METRE = wireOhms({ mm2: awgMm2(GAUGE), metres: 1 }).ohms;
const SOLID_OHMS_PER_METRE =
	Number(reference("conductor-awg-solid").find(({ awg }) => awg === String(GAUGE))!.formula_ohm_per_km_20C) /
	1000;

function volts(metres: number, from: string, to: string): Reading {
	const car = openCar({
		"parts.csv": `part,kind,values\nBAT,battery,volts=14; ohms=0.000001\nLOAD,resistor,ohms=${ohmsOf("N22", "R2")}`,
		"contacts.csv": "contact,part,role\nBAT.+,BAT,+\nBAT.-,BAT,-\nLOAD.1,LOAD,a\nLOAD.2,LOAD,b",
		"wires.csv": `wire,from,to,size,length\nOUT,BAT.+,LOAD.1,${GAUGE} AWG,${metres}\nBACK,LOAD.2,BAT.-,${GAUGE} AWG,${metres} m`,
		"conditions.csv": "condition,subject,state\non,BAT,on",
	});
	return takeReading(car.circuit("delivered"), { what: "volts", from, to, when: "on" });
}

/** Half a unit of the last digit printed. */
const close = (reading: Reading, printed: number, half: number) =>
	expect(Math.abs(reading.value! - printed)).toBeLessThanOrEqual(half);

describe("wires of the published resistance", () => {
	const cool = ohmsOf("N22", "R1") / OHMS_PER_METRE;
	const warm =
		cool * (wireOhms({ mm2: 1, metres: 1, celsius: 35 }).ohms / wireOhms({ mm2: 1, metres: 1 }).ohms);

	it("at 20 degrees C", () => {
		close(volts(cool, "LOAD.1", "LOAD.2"), answer("N22", "2-3"), 0.05);
		close(volts(cool, "BAT.+", "LOAD.1"), answer("N22", "1-2"), 0.005);
		close(volts(cool, "LOAD.2", "BAT.-"), answer("N22", "3"), 0.005);
	});

	it("at 35 degrees C", () => {
		close(volts(warm, "LOAD.1", "LOAD.2"), answer("N23", "2-3"), 0.005);
		close(volts(warm, "BAT.+", "LOAD.1"), answer("N23", "1-2"), 0.005);
	});
});

it("wires as long as solid ones would be: stranded ones lie a little higher, the published figures within the band", () => {
	const metres = ohmsOf("N22", "R1") / SOLID_OHMS_PER_METRE;
	const pairs = [
		["LOAD.1", "LOAD.2", answer("N22", "2-3")],
		["BAT.+", "LOAD.1", answer("N22", "1-2")],
	] as const;
	for (const [from, to, printed] of pairs) {
		const reading = volts(metres, from, to);
		expect(reading.low).toBeLessThan(printed);
		expect(reading.high).toBeGreaterThan(printed);
	}
	const drop = volts(metres, "BAT.+", "LOAD.1").value!;
	expect(drop / answer("N22", "1-2")).toBeGreaterThan(1);
	expect(drop / answer("N22", "1-2")).toBeLessThan(1.04);
});
