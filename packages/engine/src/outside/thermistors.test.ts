/** Published NTC tables against the two-point form, and through the tables of a car (reference/electrical/ntc-tables.csv). */
import { describe, expect, it } from "vitest";
import { openCar } from "../car.js";
import { thermistorOhms } from "../devices/sensors.js";
import { takeReading } from "../readings/index.js";
import { reference } from "../units/reference.test-helper.js";

const KELVIN = 273.15;

const rows = reference("ntc-tables").map((row) => ({
	sensor: row.sensor!,
	celsius: Number(row.temp_C),
	ohms: Number(row.ohm),
}));

/** The part's own figures: its ohms at 25 degrees C, and B from 25 and 85 degrees C as IEC 60539-1 has it (from memory). */
function partOf(sensor: string) {
	const at = (celsius: number) => rows.find((row) => row.sensor === sensor && row.celsius === celsius)!.ohms;
	const beta = Math.log(at(25) / at(85)) / (1 / (25 + KELVIN) - 1 / (85 + KELVIN));
	return { ohms25: at(25), beta };
}

/** One B serves between the temperatures it comes of; outside, the tables bend away from it. */
function allowed(celsius: number): number {
	if (celsius >= 25 && celsius <= 85) return 0.015;
	return celsius >= 0 && celsius <= 110 ? 0.07 : 0.2;
}

describe.each([...new Set(rows.map(({ sensor }) => sensor))])("%s", (sensor) => {
	const { ohms25, beta } = partOf(sensor);
	const table = rows.filter((row) => row.sensor === sensor);

	it.each(table)("$celsius degrees C: $ohms ohm", ({ celsius, ohms }) => {
		expect(Math.abs(thermistorOhms(ohms25, beta, celsius) / ohms - 1)).toBeLessThan(allowed(celsius));
	});

	it("an ohmmeter on the car shows the table's ohms", () => {
		const inside = table.filter(({ celsius }) => celsius >= 25 && celsius <= 85);
		const { circuit } = openCar({
			"parts.csv": `part,kind,values\nB-TMP,thermistor,ohms_25=${ohms25}; beta=${beta}`,
			"contacts.csv": "contact,part,role\nB-TMP.1,B-TMP,a\nB-TMP.2,B-TMP,b",
			"wires.csv": "wire,from,to,size,length\nW1,B-TMP.1,S1,0.5,1 m\nW2,B-TMP.2,S2,0.5,1 m",
			"joints.csv": "joint,kind\nS1,splice\nS2,splice",
			"conditions.csv": `condition,subject,state\n${inside.map(({ celsius }) => `t${celsius},B-TMP,${celsius}`).join("\n")}`,
		});
		for (const { celsius, ohms } of inside) {
			const reading = takeReading(circuit("delivered"), {
				what: "ohms",
				from: "S1",
				to: "S2",
				when: `t${celsius}`,
			});
			expect(Math.abs(reading.value! / ohms - 1)).toBeLessThan(allowed(celsius));
			expect(reading.low).toBeLessThan(ohms);
			expect(reading.high).toBeGreaterThan(ohms);
		}
	});
});
