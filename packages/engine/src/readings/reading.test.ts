/** What a reading refuses, how the meter is connected, and what it says of its grounds. */
import { describe, expect, it } from "vitest";
import { openCar } from "../car.js";
import { demoCar, demoFiles } from "../test-support/demo.test-helper.js";
import { ReadingError, takeReading, type What } from "./reading.js";

const small = demoCar("small").circuit("delivered");
const main = demoCar("main").circuit("converted");
const read = (what: What, from: string, to: string, when: string, circuit = small) =>
	takeReading(circuit, { what, from, to, when });

describe("refused", () => {
	it("a contact that is none: the nearest name is offered", () => {
		expect(() => read("volts", "CU.77", "CU.2", "key-on")).toThrow(ReadingError);
		expect(() => read("volts", "CU.77", "CU.2", "key-on")).toThrow(
			/^no contact or joint 'CU\.77' in this car; CU\.7, perhaps; name a contact \(PART\.NAME\) or a joint$/,
		);
		expect(() => read("volts", "CU.7", "S4P", "key-on")).toThrow(/'S4P'.*SP4, perhaps/);
		expect(() => read("volts", "CU.7", "CU", "key-on")).toThrow(/'CU'/);
	});

	it("the part's own side of something that is no contact", () => {
		expect(() => read("volts", "SP1!pin", "CU.2", "key-on")).toThrow(/no contact or joint 'SP1'/);
	});

	it("a condition that is none: the known ones are listed", () => {
		expect(() => read("volts", "CU.7", "CU.2", "key on")).toThrow(RangeError);
		expect(() => read("volts", "CU.7", "CU.2", "key on")).toThrow(
			"no condition 'key on'; this car has: battery-off, key-on, lamps-on, lever-down",
		);
	});

	it("ohms on a live circuit: what is on, and a condition in which nothing is", () => {
		expect(() => read("ohms", "K1.86", "K1.85", "key-on")).toThrow(ReadingError);
		expect(() => read("ohms", "K1.86", "K1.85", "key-on")).toThrow(
			"ohms are read with the battery off, but in 'key-on' BAT is on; use battery-off",
		);
		expect(() => read("ohms", "ECU.A14", "ECU.A15", "running", main)).toThrow(
			/in 'running' BAT and GEN is on; use battery-off/,
		);
	});

	it("ohms where no condition has the battery off", () => {
		const files = demoFiles("small");
		files["conditions.csv"] = files["conditions.csv"]!.replace(/^battery-off.*\n/m, "");
		const { circuit } = openCar(files);
		expect(() => read("ohms", "K1.86", "K1.85", "key-on", circuit("delivered"))).toThrow(
			/BAT is on; use a condition that sets the battery off/,
		);
	});

	it("amperes from a point to itself", () => {
		expect(() => read("amps", "SP1", "SP1", "key-on")).toThrow(/the same point: no current to measure/);
	});
});

describe("never measured", () => {
	const never =
		/never measured here\. Battery off, wait the time the car's maker gives, and follow the maker's procedure/;
	const points = ["Q-DRV.1", "Q-DRV.2", "RCU.5", "RCU.1", "X-CS.3a", "X-CS.3b", "Q-BTR.2"];
	it.each(points)("%s: a restraint circuit, by any meter, from any side", (point) => {
		for (const what of ["ohms", "volts", "drop", "amps"] as const) {
			expect(() => read(what, point, "BAT.-", "battery-off", main)).toThrow(never);
			expect(() => read(what, "BAT.-", point, "battery-off", main)).toThrow(never);
		}
		expect(() => read("ohms", `${point}!pin`, "BAT.-", "battery-off", main)).toThrow(
			/never measured|no contact or joint/,
		);
	});

	it("every contact of a part, a housing or a wire marked so, and no ground point of the car", () => {
		const { loom } = main;
		const marked = (marks: readonly string[] | undefined) => marks?.includes("pyrotechnic") ?? false;
		let count = 0;
		for (const contact of loom.contacts.values()) {
			if (!marked(loom.parts.get(contact.part)?.marks) && !marked(loom.parts.get(contact.connector)?.marks))
				continue;
			count++;
			expect(() => read("volts", contact.id, "BAT.-", "key-on", main), contact.id).toThrow(never);
		}
		expect(count).toBeGreaterThan(20);
		for (const joint of loom.joints.values())
			if (joint.kind === "ground")
				expect(() => read("volts", joint.id, "BAT.-", "key-on", main)).not.toThrow();
	});

	it("high voltage: out of scope, named as such", () => {
		const files = demoFiles("small");
		files["wires.csv"] = files["wires.csv"]!.trim()
			.split("\n")
			.map((line, k) =>
				k === 0 ? `${line},marks` : line.startsWith("W11,") ? `${line},high voltage` : `${line},`,
			)
			.join("\n");
		const circuit = openCar(files).circuit("delivered");
		expect(() => read("volts", "E-L.1", "BAT.-", "lamps-on", circuit)).toThrow(
			/E-L\.1 belongs to a high-voltage circuit: out of scope here\. Only trained persons/,
		);
		// The splice at its other end is inside that circuit, the lamp's other contact is not.
		expect(() => read("volts", "SP3", "BAT.-", "lamps-on", circuit)).toThrow(/high-voltage/);
		expect(() => read("volts", "E-L.2", "BAT.-", "lamps-on", circuit)).not.toThrow();
	});
});

describe("amperes", () => {
	it("along a wire: a clamp, with the sign of the arrow", () => {
		const there = read("amps", "K1.87", "X1.1a", "lamps-on");
		expect(there.how).toMatch(/^Clamp/);
		// Two lamps of 8.68 ohm on about 12.3 V.
		expect(there.value).toBeGreaterThan(2.6);
		expect(there.value).toBeLessThan(3);
		expect(read("amps", "X1.1a", "K1.87", "lamps-on").value).toBeCloseTo(-there.value!, 12);
	});

	it("through a part: the same current leaves its other side", () => {
		const wire = read("amps", "SP3", "E-L.1", "lamps-on").value!;
		expect(read("amps", "E-L.1", "E-L.2", "lamps-on").value).toBeCloseTo(wire, 9);
		expect(read("amps", "E-L.2", "G2", "lamps-on").value).toBeCloseTo(wire, 9);
	});

	it("where nothing joins the two: an ammeter in line, and what it would carry there", () => {
		// The relay's contact bridged by hand: the lamps light without it.
		const bridged = read("amps", "K1.30", "K1.87", "key-on");
		expect(bridged.value).toBe(0);
		const inLine = read("amps", "SP1", "X1.1a", "key-on");
		expect(inLine.how).toMatch(
			/^Ammeter in line from SP1 to X1\.1a, which nothing joins directly\..*short circuit: fuse the lead/,
		);
		expect(inLine.value).toBeGreaterThan(2.6);
		expect(inLine.value).toBeLessThan(3.1);
	});
});

describe("what a reading tells", () => {
	it("volts and drop are the same figure, differently taken", () => {
		const volts = read("volts", "BAT.+", "E-L.1", "lamps-on");
		const drop = read("drop", "BAT.+", "E-L.1", "lamps-on");
		expect(drop.value).toBe(volts.value);
		expect(drop.how).not.toBe(volts.how);
		expect([volts.unit, drop.unit]).toEqual(["V", "V"]);
	});

	it("leads changed over: the sign changes, the band with it", () => {
		const one = read("volts", "CU.7", "CU.2", "key-on");
		const two = read("volts", "CU.2", "CU.7", "key-on");
		expect(two.value).toBe(-one.value!);
		expect(two.low).toBeCloseTo(-one.high!, 12);
		expect(two.high).toBeCloseTo(-one.low!, 12);
	});

	it("body metal and the two sides of a contact can be named", () => {
		expect(read("volts", "CU.1", "body", "key-on").value).toBeGreaterThan(12);
		const side = read("volts", "E-L.1", "E-L.1!pin", "lamps-on").value!;
		// 1.4 A through a mated contact of 3 milliohm.
		expect(side).toBeCloseTo(0.0042, 3);
	});

	it("the same point twice reads nothing", () => {
		expect(read("volts", "CU.1", "CU.1", "key-on").value).toBe(0);
		expect(read("ohms", "CU.1", "CU.1", "battery-off").value).toBe(0);
	});

	it("open: no value, no band, no grounds", () => {
		// The work-lamp wire in the relay's released make contact.
		const reading = read("volts", "K1.86", "CU.2", "key-on");
		expect(reading.open).toBe(false);
		const open = takeReading(demoCar("small").circuit("converted"), {
			what: "ohms",
			from: "S-WRK.1",
			to: "S-WRK.2",
			when: "battery-off",
		});
		expect(open).toMatchObject({
			open: true,
			value: undefined,
			low: undefined,
			high: undefined,
			grounds: [],
		});
	});

	it("grounds: the largest shares first, each a share of the variance", () => {
		const { grounds } = read("volts", "CU.7", "CU.2", "key-on");
		expect(grounds[0]!.text).toBe("B-TMP: element");
		const shares = grounds.map(({ share }) => share);
		expect([...shares].sort((x, y) => y - x)).toEqual(shares);
		expect(shares.reduce((sum, x) => sum + x, 0)).toBeLessThanOrEqual(1 + 1e-9);
		expect(shares[0]).toBeGreaterThan(0.5);
	});

	// The README of the small car, by hand: 5 V x 2252 / (2252 + 2200).
	it("by hand: the temperature input and the lever of the small car", () => {
		expect(read("volts", "CU.7", "CU.2", "key-on").value).toBeCloseTo((5 * 2252) / (2252 + 2200), 2);
		expect(read("volts", "CU.4", "CU.2", "key-on").value).toBeCloseTo(0.5, 2);
	});
});
