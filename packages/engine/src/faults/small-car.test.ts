/** The fault set of the small car, counted by hand from its tables, and what single faults do to its volts. */
import { describe, expect, it } from "vitest";
import { Circuit, type Operating, operate, pinNode, voltsAt } from "../circuit/index.js";
import { NOTHING_TOUCHED } from "../recipe/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { type Fault, faultSet } from "./index.js";

const car = demoCar("small");
const loom = car.delivered;
const circuit = new Circuit(loom);
const faults = faultSet({ circuit, loom, touched: NOTHING_TOUCHED, steps: new Map() });
const byId = new Map(faults.map((fault) => [fault.id, fault]));

function count(list: readonly Fault[]): Record<string, number> {
	const counts: Record<string, number> = {};
	for (const { kind } of list) counts[kind] = (counts[kind] ?? 0) + 1;
	return counts;
}

// 23 wires have 46 ends: 30 crimped into contacts (seven wires have two), 16 in splices and ground points.
// 28 contacts of parts are mated one by one, the in-line cavity is one more; two ground points are bolted.
const CONNECTIONS = 23 + 30 + 16 + 28 + 1 + 2;

it("lists each kind as often as the tables have places for it", () => {
	expect(count(faults)).toEqual({
		open: CONNECTIONS,
		"added resistance": CONNECTIONS,
		"short to ground": 23,
		// The wire at the battery's plus clamp is the supply itself.
		"short to supply": 22,
		// Plug of the unit with cavities 1 to 7: six pairs; the lever's 1 to 3: two; temperature, left lamp, right lamp: one each.
		"short to neighbour": 11,
		"fuse blown": 2,
		// Battery, key, relay coil and contact, both halves of the lever's track, temperature, two lamps.
		"device dead": 9,
		// Ground and five pins of other sorts; a dead supply is a dead unit.
		"control-unit pin dead": 6,
		"control unit dead": 1,
		// Plugs of unit, lever, temperature and both lamps, and the in-line connector.
		"connector not locked": 6,
		"fuse not seated": 2,
		"relay not seated": 1,
		"wrong relay": 1,
		// Temperature, two lamps.
		"wrong value": 3,
	});
});

describe("after the conversion", () => {
	const steps = new Map(
		car.tables.recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]),
	);
	const converted = new Circuit(car.converted);
	const list = faultSet({ circuit: converted, loom: car.converted, touched: car.touched, steps });

	// One wire cut in two and two laid: three wires, two crimps, four splice ends, a switch with two contacts and a
	// ground point more. The lamp's ground wire moved from one ring to another.
	it("lists what was added", () => {
		expect(count(list)).toEqual({
			...count(faults),
			open: CONNECTIONS + 3 + 2 + 4 + 2 + 1,
			"added resistance": CONNECTIONS + 3 + 2 + 4 + 2 + 1,
			"short to ground": 26,
			"short to supply": 25,
			"device dead": 10,
			// The lamp's ground wire.
			"ground shared wrongly": 1,
			// Four of the wires worked on lie in one bundle: six pairs.
			"short in the bundle": 6,
		});
	});

	it("what hands were on is the more suspect", () => {
		const prior = (id: string) => list.find((fault) => fault.id === id)!.prior;
		expect(prior("open:crimp:S-WRK.1:N1")).toBeGreaterThan(100 * prior("open:crimp:CU.1:W8"));
		expect(prior("open:joint:SN1:N1")).toBeGreaterThan(100 * prior("open:joint:SP1:W2"));
		expect(prior("open:joint:G3:W14")).toBeGreaterThan(100 * prior("open:joint:G1:W15"));
		expect(prior("open:wire:N1")).toBeGreaterThan(100 * prior("open:wire:W8"));
	});
});

describe("what a fault does", () => {
	const point = (id: string, when: string): Operating => {
		const { change } = byId.get(id)!.patterns[0]!;
		return operate(circuit, circuit.standing(when), { change });
	};
	const volts = (at: Operating, contact: string, reference = "CU.2") =>
		voltsAt(at.volts, circuit.node(pinNode(contact))!) - voltsAt(at.volts, circuit.node(pinNode(reference))!);

	it("open sensor wire: the pulled-up input stands at its supply", () => {
		expect(volts(point("open:wire:W22", "key-on"), "CU.7")).toBeCloseTo(5, 2);
		expect(volts(point("open:mated contact:B-TMP.2", "key-on"), "CU.7")).toBeCloseTo(5, 2);
	});

	it("its wire touching the body: nothing left", () => {
		expect(volts(point("short to ground:wire:W22", "key-on"), "CU.7")).toBeCloseTo(0, 2);
	});

	it("its wire touching a supply: battery volts", () => {
		expect(volts(point("short to supply:wire:W22", "key-on"), "CU.7")).toBeGreaterThan(12);
	});

	it("the sensor supply touching the body drags it down, and what it feeds with it", () => {
		const at = point("short to ground:wire:W17", "key-on");
		expect(volts(at, "CU.3")).toBeLessThan(1);
		expect(volts(at, "CU.4")).toBeLessThan(0.2);
	});

	it("a blown fuse: the unit does not run", () => {
		expect(volts(point("fuse blown:F2", "key-on"), "CU.7")).toBeCloseTo(0, 3);
	});

	it("a unit that does not run although fed", () => {
		const at = point("control unit dead:CU", "key-on");
		expect(volts(at, "CU.1")).toBeGreaterThan(12);
		expect(volts(at, "CU.7")).toBeCloseTo(0, 3);
	});

	it("a dead relay contact: the lamps stay dark, the coil is fed", () => {
		const at = point("device dead:K1:make contact", "lamps-on");
		expect(volts(at, "E-L.1", "E-L.2")).toBeCloseTo(0, 6);
		expect(volts(at, "K1.86", "K1.85")).toBeGreaterThan(12);
	});

	it("an open coil wire: the same lamps dark, no volts on the coil", () => {
		const at = point("open:wire:W9", "lamps-on");
		expect(volts(at, "E-L.1", "E-L.2")).toBeCloseTo(0, 6);
		expect(volts(at, "K1.86", "K1.85")).toBeCloseTo(0, 2);
	});

	it("a poor ground of one lamp takes volts from that lamp alone", () => {
		const { patterns } = byId.get("added resistance:joint:G2:W14")!;
		const at = operate(circuit, circuit.standing("lamps-on"), { change: patterns[0]!.change });
		const sound = operate(circuit, circuit.standing("lamps-on"));
		// 1 ohm in the way of 1.4 A.
		expect(volts(sound, "E-R.1", "E-R.2") - volts(at, "E-R.1", "E-R.2")).toBeGreaterThan(1);
		expect(volts(at, "E-L.1", "E-L.2")).toBeGreaterThan(volts(sound, "E-L.1", "E-L.2"));
	});

	it("neighbours bridged: sensor supply and lever signal come together", () => {
		const at = point("short to neighbour:CU.3:CU.4", "key-on");
		expect(volts(at, "CU.4")).toBeCloseTo(volts(at, "CU.3"), 2);
		expect(volts(at, "CU.4")).toBeGreaterThan(4.5);
	});
});
