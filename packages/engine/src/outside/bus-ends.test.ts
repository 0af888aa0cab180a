/** Resistance between the lines of the data bus by its ends: reference/electrical/can-physical-layer.csv, ISO 11898-2. */
import { describe, expect, it } from "vitest";
import { openCar, type Which } from "../car.js";
import { takeReading } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { reference } from "../units/reference.test-helper.js";

const rows = reference("can-physical-layer");
const row = (number: string) => Number(rows.find(({ id }) => id === `can-physical-layer-${number}`)!.value);
const END_OHMS = row("001");
const TWO_ENDS = row("002");
const ONE_END = row("003");
const THREE_ENDS = row("004");
const RECESSIVE_VOLTS = row("011");

/** Ranges such as `2.75-4.5 / 0.5-2.25` of one row. */
const ranges = (number: string) =>
	rows
		.find(({ id }) => id === `can-physical-layer-${number}`)!
		.value!.split(" / ")
		.map((range) => {
			const [low, high] = range.split("-").map(Number);
			return { low: low!, high: high! };
		});

/** A bus of `ends` terminators hung on splices 1 m apart by stubs of 0.3 m, with two battery-fed units on it. */
function bus(ends: number) {
	const names = Array.from({ length: ends }, (_, k) => `E${k + 1}`);
	const at = (k: number) => Math.min(k, 1) + 1;
	const units = ["A", "B"];
	return openCar({
		"parts.csv": [
			"part,kind,values",
			"BAT,battery,",
			...names.map((e) => `${e},bus end,ohms=${END_OHMS}`),
			...units.map((u) => `${u},control unit,`),
		].join("\n"),
		"contacts.csv": [
			"contact,part,role",
			"BAT.+,BAT,+",
			"BAT.-,BAT,-",
			...names.flatMap((e) => [`${e}.H,${e},high`, `${e}.L,${e},low`]),
			...units.flatMap((u) => [
				`${u}.1,${u},supply`,
				`${u}.2,${u},ground`,
				`${u}.H,${u},bus high`,
				`${u}.L,${u},bus low`,
			]),
		].join("\n"),
		"joints.csv": [
			"joint,kind",
			"H1,splice",
			"H2,splice",
			"L1,splice",
			"L2,splice",
			"G,ground",
			"P,bar",
		].join("\n"),
		"wires.csv": [
			"wire,from,to,size,length",
			"TH,H1,H2,0.35,1 m",
			"TL,L1,L2,0.35,1 m",
			"M,BAT.-,G,10,0.5 m",
			"F,BAT.+,P,4,0.5 m",
			...names.flatMap((e, k) => [`${e}h,${e}.H,H${at(k)},0.35,0.3 m`, `${e}l,${e}.L,L${at(k)},0.35,0.3 m`]),
			...units.flatMap((u, k) => [
				`${u}p,P,${u}.1,0.5,1 m`,
				`${u}g,${u}.2,G,0.5,1 m`,
				`${u}h,${u}.H,H${k + 1},0.35,0.3 m`,
				`${u}l,${u}.L,L${k + 1},0.35,0.3 m`,
			]),
		].join("\n"),
		"conditions.csv": [
			"condition,subject,state",
			"off,BAT,off",
			"on,BAT,on",
			"sent,A.H,dominant",
			"sent,A.L,dominant",
		].join("\n"),
	});
}

describe("ohms between the lines, battery off", () => {
	// The published figure is that of the ends alone. The inputs of two units, 50 kohm each from line to line, take
	// 0.24 % off it and 1 m of bus adds 0.2 ohm.
	it.each([
		{ ends: 1, ohms: ONE_END },
		{ ends: 2, ohms: TWO_ENDS },
		{ ends: 3, ohms: THREE_ENDS },
	])("$ends ends: $ohms ohm", ({ ends, ohms }) => {
		const reading = takeReading(bus(ends).circuit("delivered"), {
			what: "ohms",
			from: "A.H",
			to: "B.L",
			when: "off",
		});
		expect(Math.abs(reading.value! / ohms - 1)).toBeLessThan(0.01);
		expect(reading.low).toBeLessThan(ohms);
		expect(reading.high).toBeGreaterThan(ohms);
	});

	it("no end: only the units' inputs, kilohms", () => {
		const reading = takeReading(bus(0).circuit("delivered"), {
			what: "ohms",
			from: "A.H",
			to: "B.L",
			when: "off",
		});
		expect(reading.value).toBeGreaterThan(20_000);
	});
});

describe("the camper's bus", () => {
	const car = demoCar("main");
	// Six units hang on it, 50 kohm each from line to line: 0.7 % off the ends alone.
	it.each<{ which: Which; when: string }>([
		{ which: "delivered", when: "battery-off" },
		{ which: "converted", when: "battery-off" },
	])("$which, $when: 60 ohm", ({ which, when }) => {
		const reading = takeReading(car.circuit(which), { what: "ohms", from: "ECU.A14", to: "ECU.A15", when });
		expect(Math.abs(reading.value! / TWO_ENDS - 1)).toBeLessThan(0.015);
		expect(reading.low).toBeLessThan(TWO_ENDS);
		expect(reading.high).toBeGreaterThan(TWO_ENDS);
	});
});

/** From memory, ISO 11898-2: a receiver takes the bus as dominant from this difference on. */
const RECEIVED_DOMINANT = 0.9;
/** From memory, ISO 11898-2: a sender's least difference into the bus. */
const SENT_DOMINANT = 1.5;

describe("volts of the lines, against the unit's own ground", () => {
	const circuit = bus(2).circuit("delivered");
	const volts = (from: string, when: string) =>
		takeReading(circuit, { what: "volts", from, to: "B.2!pin", when }).value!;

	it("recessive: both at rest", () => {
		expect(volts("B.H", "on")).toBeCloseTo(RECESSIVE_VOLTS, 2);
		expect(volts("B.L", "on")).toBeCloseTo(RECESSIVE_VOLTS, 2);
	});

	it("dominant: apart, each line within its range at the far unit", () => {
		const [high, low] = [volts("B.H", "sent"), volts("B.L", "sent")];
		const [highRange, lowRange] = ranges("026");
		expect(high).toBeGreaterThan(highRange!.low);
		expect(high).toBeLessThan(highRange!.high);
		expect(low).toBeGreaterThan(lowRange!.low);
		expect(low).toBeLessThan(lowRange!.high);
		expect(high - low).toBeGreaterThan(RECEIVED_DOMINANT);
		expect(high - low).toBeGreaterThan(SENT_DOMINANT);
	});
});
