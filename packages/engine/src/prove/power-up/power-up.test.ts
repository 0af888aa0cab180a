import { describe, expect, test } from "vitest";
import { forbidden, takeReading } from "../../readings/index.js";
import { battery, connector, part, unit, wire } from "../../rules/support/bench-loom.test-helper.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { tinyCar } from "../tiny-car.test-helper.js";
import { powerUp } from "./stages.js";
import type { Stage } from "./types.js";

const kinds = (stages: readonly Stage[]) => stages.map(({ kind }) => kind);
const byTitle = (stages: readonly Stage[], text: string) => stages.find(({ title }) => title.includes(text))!;
const reading = ({ read }: Stage, unitName: string, from: string) =>
	read.find((r) => r.unit === unitName && r.from.startsWith(from))!;

/**
 * Two fuses on the battery: F1 feeds a control unit, F2 a lamp. Key at run closes a relay that feeds F3 and a second
 * lamp behind it.
 */
const car = tinyCar({
	parts: [
		battery,
		part("F1", "fuse", ["in", "out"], { values: { amps: 5 } }),
		part("F2", "fuse", ["in", "out"], { values: { amps: 10 } }),
		part("F3", "fuse", ["in", "out"], { values: { amps: 10 } }),
		unit("CU", "control unit", { 1: "supply", 2: "ground" }, { values: { amps: 0.5 } }),
		part("L1", "lamp", ["a", "b"], { values: { watts: 21 } }),
		part("L2", "lamp", ["a", "b"], { values: { watts: 5 } }),
		part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15", duty: "start key" }),
		part("K1", "relay", ["85", "86", "30", "87"], { values: { coil_ohms: 85 } }),
	],
	wires: [
		wire("W1", "BAT.+ > F1.in", 4),
		wire("W2", "BAT.+ > F2.in", 4),
		wire("W3", "F1.out > CU.1"),
		wire("W4", "CU.2 > G1"),
		wire("W5", "F2.out > L1.a"),
		wire("W6", "L1.b > G1"),
		wire("W7", "BAT.+ > KEY.30"),
		wire("W8", "KEY.15 > K1.86"),
		wire("W9", "K1.85 > G1"),
		wire("W10", "BAT.+ > K1.30"),
		wire("W11", "K1.87 > F3.in"),
		wire("W12", "F3.out > L2.a"),
		wire("W13", "L2.b > G1"),
		wire("W14", "BAT.- > G1", 25),
	],
	conditions: { parked: { KEY: "off" }, run: { KEY: "run" } },
});

describe("two fuses, a key and a relay", () => {
	const stages = powerUp(car);

	test("the unit's fuse goes in last of those live at rest, the switched one after the key", () => {
		expect(kinds(stages)).toEqual([
			...["before power", "test lamp", "battery"],
			...["fuse", "fuse", "key on", "fuse", "key on"],
		]);
		const fuses = stages.filter(({ kind }) => kind === "fuse").map(({ title }) => title);
		expect(fuses).toEqual(["fuse F2", "fuse F1", "fuse F3"]);
		expect(stages.map(({ number }) => number)).toEqual([...stages.keys()]);
	});

	test("clamps are open before power; the lamp stays dark and lets 1.45 A through at most", () => {
		const [clamps, lamp] = stages as [Stage, Stage];
		expect(clamps.read).toHaveLength(1);
		expect(clamps.read[0]).toMatchObject({ value: undefined, unit: "ohm", low: 2e6 });
		// 12.6 V / (13.5 x 13.5 / 21 ohm).
		expect(lamp.safe[0]).toContain("1.45 A");
		expect(lamp.mustBeTrue[0]).toMatch(/stays dark/);
		expect(lamp.live).toEqual(["BAT", "F1", "F2", "KEY", "K1"]);
		expect(lamp.read[0]?.question).toBeUndefined();
	});

	// 21 W at 13.5 V hot is 8.679 ohm; 12.6 V over that and some 0.1 ohm of loom and fuse.
	test("the lamp's fuse carries the lamp's current", () => {
		const stage = byTitle(stages, "F2");
		const amps = reading(stage, "A", "F2");
		expect(amps.value).toBeGreaterThan(12.6 / (8.679 + 0.15));
		expect(amps.value).toBeLessThan(12.6 / 8.679);
		expect(stage.mustBeTrue).toContain("L1 lights.");
		expect(stage.mustBeTrue).toContain("No relay moves.");
		expect(stage.safe).toEqual(["Still without supply: CU."]);
		expect(stage.live).toEqual(["L1"]);
	});

	// A unit of 0.5 A at 12 V is 24 ohm.
	test("the unit's fuse carries the unit's draw and is read at its supply", () => {
		const stage = byTitle(stages, "F1");
		expect(reading(stage, "A", "F1").value).toBeCloseTo(12.6 / 24, 2);
		expect(reading(stage, "V", "CU.1").value).toBeCloseTo(12.5, 0);
		expect(stage.safe).toEqual([]);
	});

	test("the key pulls in the relay and nothing else", () => {
		const stage = stages[5]!;
		expect(stage.mustBeTrue).toEqual(["K1 pulls in.", "No other relay moves."]);
		expect(stage.live).toEqual(expect.arrayContaining(["F3", "K1", "KEY"]));
		expect(byTitle(stages, "F3").connect[0]).toMatch(/^Key off, fuse F3 in/);
	});
});

test("a car without a battery has no power-up", () => {
	expect(
		powerUp(tinyCar({ parts: [part("L1", "lamp", ["a", "b"], { values: { watts: 5 } })], wires: [] })),
	).toEqual([]);
});

describe("starting", () => {
	const start = (switchPositions: string) =>
		tinyCar({
			parts: [
				battery,
				connector("X-ST"),
				part("F1", "fuse", ["in", "out"], { values: { amps: 30 } }),
				part("KEY", "switch", ["30", "50"], { positions: "off:; start:30-50", duty: "start key" }),
				part("CL", "switch", ["1", "2"], { positions: switchPositions, duty: "clutch switch" }),
				{
					...part("ST", "starter", ["30", "50", "31"]),
					contacts: part("ST", "starter", ["30", "50", "31"]).contacts.map((c) =>
						c.role === "50" ? { ...c, connector: "X-ST", cavity: "1" } : c,
					),
				},
			],
			wires: [
				wire("W1", "BAT.+ > F1.in", 4),
				wire("W2", "F1.out > KEY.30", 4),
				wire("W3", "KEY.50 > CL.1", 4),
				wire("W4", "CL.2 > ST.50", 4),
				wire("W5", "BAT.+ > ST.30", 25),
				wire("W6", "ST.31 > G1", 25),
				wire("W7", "BAT.- > G1", 25),
			],
			conditions: {
				parked: { KEY: "off" },
				"start, clutch up": { KEY: "start" },
				"start, clutch down": { KEY: "start", CL: "pressed" },
			},
		});

	test("is read with the starter's plug off: dead with the clutch up, fed with it down", () => {
		const stage = powerUp(start("released:; pressed:1-2")).find(({ kind }) => kind === "start inhibited")!;
		expect(stage.read.map(({ question }) => question?.when)).toEqual([
			"start, clutch up; CL=released; X-ST=unmated",
			"start, clutch up; CL=pressed; X-ST=unmated",
		]);
		expect(stage.read[0]).toMatchObject({ value: undefined, low: -0.5, high: 0.5 });
		expect(stage.read[1]!.value).toBeCloseTo(12.6, 1);
		expect(stage.mustBeTrue).toEqual([
			"With CL released terminal 50 of ST stays dead.",
			"With CL pressed terminal 50 of ST gets its feed.",
		]);
		expect(stage.cautions.join()).not.toMatch(/Stop:/);
		expect(stage.safe[0]).toMatch(/cannot turn/);
	});

	test("a loom that starts in gear is stopped before cranking", () => {
		const stage = powerUp(start("released:1-2; pressed:1-2")).find(({ kind }) => kind === "start inhibited")!;
		expect(stage.cautions.join(" ")).toMatch(/Stop: with CL released this loom itself lets the car start/);
	});

	test("cranking is the listed condition in which the starter turns", () => {
		const stage = powerUp(start("released:; pressed:1-2")).at(-1)!;
		expect(stage.kind).toBe("crank");
		expect(stage.title).toContain("start, clutch down");
		expect(stage.mustBeTrue[0]).toMatch(/^ST.*cranks\.$/);
	});
});

describe("the main demo car", () => {
	const main = demoCar("main");
	const circuit = main.circuit("converted");
	const stages = powerUp(main);
	const isSupply = (id = "") => {
		const contact = main.converted.contacts.get(id);
		return contact?.role === "supply" && main.converted.parts.get(contact.part)?.kind === "control unit";
	};

	test("every fuse goes in once, restraints last of all", () => {
		const fuses = [...main.converted.parts.values()]
			.filter(({ kind }) => kind === "fuse")
			.map(({ id }) => id);
		const titled = stages
			.filter(({ kind }) => kind === "fuse" || kind === "restraints")
			.map(({ title }) => /(?:fuse|restraints:) (F\w+)/.exec(title)![1]!);
		expect([...titled].sort()).toEqual([...fuses].sort());
		expect(stages.at(-1)?.kind).toBe("restraints");
		expect(titled.at(-1)).toBe("F33");
	});

	test("at rest, fuses that wake a unit go in after all that do not", () => {
		const first = stages.findIndex(({ kind }) => kind === "key on");
		const wakes = stages
			.slice(0, first)
			.filter(({ kind }) => kind === "fuse")
			.map(({ read }) => read.some(({ question }) => isSupply(question?.from)));
		expect(wakes.indexOf(true)).toBeGreaterThan(0);
		expect(wakes.slice(wakes.indexOf(true)).every(Boolean)).toBe(true);
	});

	test("the relays move that the conversion leaves: ignition, main, then start and pump", () => {
		const said = stages.flatMap(({ kind, mustBeTrue }) =>
			mustBeTrue.filter((text) => text.includes("pulls in")).map((text) => `${kind}: ${text.split(" ")[0]}`),
		);
		expect(said).toEqual(["key on: K7", "fuse: K9", "key on: K1", "crank: K2", "crank: K3"]);
	});

	test("every reading is one that may be taken, and passes on the sound car", () => {
		let count = 0;
		for (const { read } of stages)
			for (const { question, value, low, high } of read) {
				expect(value === undefined || (value >= low && value <= (high ?? Number.POSITIVE_INFINITY))).toBe(
					true,
				);
				if (question === undefined) continue;
				expect(forbidden(main.converted, question.from)).toBeUndefined();
				expect(forbidden(main.converted, question.to)).toBeUndefined();
				// One in a few: each is a solve of the whole car.
				if (count++ % 6 === 0) expect(takeReading(circuit, question).value ?? 0).toBeCloseTo(value ?? 0, 9);
			}
		expect(count).toBeGreaterThan(100);
	});

	test("what a stage calls dead gets no volts: units still without supply", () => {
		const [, , connected] = stages;
		expect(connected!.safe).toEqual(["Still without supply: ECU, ESU, ICU, BCU and RCU."]);
	});
});
