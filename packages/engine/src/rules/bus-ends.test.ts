import { expect, test } from "vitest";
import { busEnds } from "./bus-ends.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const pins = { 1: "supply", 2: "ground", H: "bus high", L: "bus low" };
const units = ["ECU", "ICU", "BCU"].map((id) => unit(id, "control unit", pins));
const end = (id: string) => part(id, "bus end", ["high", "low"], { duty: "bus end" });

function car(runs: readonly string[], ends = 2) {
	return benchCircuit({
		parts: [battery, ...units, ...["R1", "R2", "R3"].slice(0, ends).map(end)],
		joints: ["SH", "SL"].map((id) => joint(id)).concat(joint("G1", "ground")),
		wires: [
			...grounded,
			...units.map((row) => wire(`${row.part.id}-1`, `BAT.+ > ${row.part.id}.1`)),
			...units.map((row) => wire(`${row.part.id}-2`, `${row.part.id}.2 > G1`)),
			...runs.map((run, k) => wire(`B${k + 1}`, run, 0.5)),
		],
	});
}

const stub = (id: string) => [`SH > ${id}.H`, `SL > ${id}.L`];
const tail = (id: string) => [`SH > ${id}.high`, `SL > ${id}.low`];
const whole = [...stub("ECU"), ...stub("ICU"), ...stub("BCU")];

test("two ends make 60 ohm at every unit", () => {
	expect(busEnds.check(car([...whole, ...tail("R1"), ...tail("R2")]))).toEqual([]);
});

test("an end that went with the gearbox unit leaves 120 ohm: one finding for the bus", () => {
	const [found, ...more] = busEnds.check(car([...whole, ...tail("R1")], 1));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "bus-ends", severity: "stop" });
	expect(found!.why).toMatch(/^1(19|20) ohm lie between the lines; .*One of the two ends is missing/);
	expect(found!.mend).toContain("Bus ends here: R1");
});

test("a third end makes 40 ohm", () => {
	const [found] = busEnds.check(car([...whole, ...tail("R1"), ...tail("R2"), ...tail("R3")], 3));
	expect(found!.why).toMatch(/^(39\.9|40|40\.\d) ohm .* an end too many/);
});

test("a unit whose low line is open: only that unit is named", () => {
	const runs = [...stub("ECU"), ...stub("ICU"), "SH > BCU.H", "BCU.L > stowed", ...tail("R1"), ...tail("R2")];
	const [found, ...more] = busEnds.check(car(runs));
	expect(more).toEqual([]);
	expect(found!.where).toBe("BCU.H to BCU.L");
	expect(found!.why).toContain("a line is open");
	expect(found!.mend).toBe("The bus is right at ECU and ICU: join BCU to it.");
});

test("a unit that hangs on one line only is named too", () => {
	const runs = [...stub("ECU"), ...stub("ICU"), "SH > BCU.H", ...tail("R1"), ...tail("R2")];
	expect(busEnds.check(car(runs)).map((f) => f.where)).toEqual(["BCU.H to BCU.L"]);
});

test("crossed lines at one unit, and joined lines", () => {
	const crossed = [...stub("ECU"), ...stub("ICU"), "SH > BCU.L", "SL > BCU.H", ...tail("R1"), ...tail("R2")];
	expect(busEnds.check(car(crossed)).map((f) => f.why)).toEqual([expect.stringContaining("changed over")]);
	expect(busEnds.check(car([...whole, "SH > SL"]))).toHaveLength(1);
});

test("a unit whose bus pins have no wires is left alone", () => {
	expect(busEnds.check(car([]))).toEqual([]);
});
