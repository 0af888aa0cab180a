import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { operate, voltsAt } from "../circuit/index.js";
import { faultsOf } from "../faults/index.js";
import type { Loom } from "../loom/index.js";
import { forbidden, takeReading } from "../readings/index.js";
import { battery, connector, part, unit, wire } from "../rules/support/bench-loom.test-helper.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { judge } from "./judge.js";
import { proveSheet } from "./sheet.js";
import { carOf, tinyCar } from "./tiny-car.test-helper.js";
import type { Provable, ProveSheet, SheetRow } from "./types.js";

const rowsOf = (sheet: ProveSheet): SheetRow[] => sheet.parts.flatMap((p) => p.rows);

/** What a meter shows on the sound car. */
function soundEntries(car: Provable, sheet: ProveSheet) {
	return rowsOf(sheet).map(({ number, question }) => ({
		row: number,
		value: takeReading(car.circuit("converted"), question).value ?? ("open" as const),
	}));
}

const lamp = part("L1", "lamp", ["a", "b"], { values: { watts: 21 } });
const fuse = part("F1", "fuse", ["in", "out"], { values: { amps: 10 } });
const loop = {
	parts: [battery, fuse, lamp],
	wires: [
		wire("W1", "BAT.+ > F1.in"),
		wire("W2", "F1.out > L1.a"),
		wire("W3", "L1.b > G1"),
		wire("W4", "BAT.- > G1"),
	],
};

describe("one lamp in one loop", () => {
	const car = tinyCar(loop);
	const sheet = proveSheet(car);
	const missed = new Map(sheet.missed.map((miss) => [miss.id, miss]));

	// Through the whole loop every opening, every ohm and every short past the lamp shows.
	test("one reading from clamp to clamp does it", () => {
		expect(sheet).toMatchObject({ readings: 1, lowerBound: 1, placeChanges: 0 });
		const [row] = rowsOf(sheet);
		expect([row!.question.from, row!.question.to].sort()).toEqual(["BAT.+", "BAT.-"]);
		// The cold filament is a tenth of 13.5 x 13.5 / 21 = 8.679 ohm; four metres of 1 mm2 are about 0.074 ohm.
		expect(row!.value).toBeGreaterThan(0.868 + 0.07);
		expect(row!.value).toBeLessThan(0.868 + 0.1);
		expect(row!.catches).toEqual(
			expect.arrayContaining([
				"open:wire:W3",
				"added resistance:joint:G1:W4",
				"short to ground:wire:W2",
				"short to supply:wire:W3",
				"fuse blown:F1",
				"device dead:L1:filament",
				"fuse not seated:F1",
			]),
		);
	});

	test("all it can detect is caught", () => {
		expect(sheet.coverage.caught).toBe(sheet.coverage.detectable);
		expect(sheet.coverage.detectable + sheet.missed.length).toBe(sheet.coverage.faults);
	});

	test("what it cannot is listed with why", () => {
		// Both wires meet on the ground point: none of their current goes through its bolt.
		expect(missed.get("open:metal:G1")?.reason).toBe("nothing to measure behind it");
		expect(missed.get("device dead:BAT:cells")?.reason).toBe("only shows under power");
		expect(missed.get("open:mated contact:BAT.+")?.reason).toBe("only shows under power");
		expect(missed.get("short to ground:wire:W3")?.reason).toBe("joins what is joined already");
		expect(missed.get("short to supply:wire:W2")?.reason).toBe("joins what is joined already");
		for (const { why } of sheet.missed) expect(why.length).toBeGreaterThan(20);
	});

	test("larger faults alone: a fifth of an ohm hides in the filament's tolerance", () => {
		expect(proveSheet(car, { leastOhms: 0.2 }).coverage.detectable).toBeLessThan(sheet.coverage.detectable);
	});

	test("faults unlikelier than asked are left out", () => {
		expect(proveSheet(car, { leastPrior: 1e-5 }).coverage.faults).toBeLessThan(sheet.coverage.faults);
	});
});

describe("a unit with its plug", () => {
	const car = tinyCar({
		parts: [
			battery,
			connector("X1", "bay"),
			unit("CU", "control unit", { 1: "supply", 2: "ground", 3: "input pull-up" }, { connector: "X1" }),
			part("S1", "switch", ["1", "2"], { positions: "off:; on:1-2", place: "dash" }),
		],
		wires: [
			wire("W1", "BAT.+ > CU.1"),
			wire("W2", "CU.2 > G1"),
			wire("W3", "CU.3 > S1.1"),
			wire("W4", "S1.2 > G1"),
			wire("W5", "BAT.- > G1"),
		],
	});
	const sheet = proveSheet(car);

	test("is measured from its plug, then with the switch held, then plugged in", () => {
		expect(sheet.parts.map(({ when }) => when)).toEqual([
			"BAT=off; X1=unmated",
			"BAT=off; X1=unmated; S1=on",
			"BAT=off",
		]);
		expect(rowsOf(sheet).map(({ number }) => number)).toEqual(rowsOf(sheet).map((_, k) => k + 1));
	});

	test("the held switch is read through, from the plug to ground", () => {
		const [row] = sheet.parts[1]!.rows;
		expect(row?.catches).toContain("device dead:S1:1-2");
	});

	test("the plug's contacts show once it is on", () => {
		const plugged = sheet.parts[2]!.rows.flatMap(({ catches }) => catches);
		expect(plugged).toContain("open:mated contact:CU.1");
		expect(plugged).toContain("connector not locked:X1");
	});

	test("an ohm at an input of kilo-ohms stays unseen, and it is said from when on it would show", () => {
		const miss = sheet.missed.find(({ id }) => id === "added resistance:mated contact:CU.3");
		expect(miss).toMatchObject({ reason: "no reading leaves its band", caughtFrom: 1000 });
	});
});

test("a stowed wire leads to nothing", () => {
	const car = tinyCar({ ...loop, wires: [...loop.wires, wire("W5", "F1.out > stowed")] });
	const miss = proveSheet(car).missed.find(({ id }) => id === "open:wire:W5");
	expect(miss?.reason).toBe("nothing to measure behind it");
});

describe.each(["small", "main"] as const)("the %s demo car", (name) => {
	const car = demoCar(name);
	const sheet = proveSheet(car);

	test("every row passes on the sound car, its limits those of the reading's band", () => {
		for (const { passes, text, row } of judge(sheet, soundEntries(car, sheet)))
			expect(passes, `${row.number}: ${text}`).toBe(true);
		for (const { question, low, high } of rowsOf(sheet).slice(0, 40)) {
			const reading = takeReading(car.circuit("converted"), question);
			if (reading.value === undefined || high === undefined) continue;
			expect(low).toBeCloseTo(reading.low!, 9);
			expect(high).toBeCloseTo(reading.high!, 9);
		}
	});

	test("all detectable faults are caught, by as few readings as can be", () => {
		expect(sheet.coverage.caught).toBe(sheet.coverage.detectable);
		expect(sheet.readings).toBe(sheet.lowerBound);
	});

	test("a step left out and one done on the wire beside are considered, and caught where some reading shows them", () => {
		const { faults } = faultsOf(car, "converted", true);
		const considered = faults.filter(({ kind }) => kind.startsWith("step "));
		const caught = new Set(rowsOf(sheet).flatMap(({ catches }) => catches));
		const missed = new Set(sheet.missed.map(({ id }) => id));
		for (const { id } of considered) expect(caught.has(id) !== missed.has(id), id).toBe(true);
		const beside = [...caught].filter((id) => id.startsWith("step at the wrong place:"));
		// Cuts of the wrong wire, and a lead freed from the next cavity.
		const places = { small: ["6@W13"], main: ["18@W209a", "30@X-BD.22b", "46@W301a"] }[name];
		expect(beside.sort()).toEqual(places.map((at) => `step at the wrong place:${at}`));
	});

	test("no reading at a circuit never measured, and next to no current through one", () => {
		expectSpared(car, sheet);
	});
});

/** Contacts allowed, and the meter's current kept out of marked wires, igniters and feeds of marked units. */
function expectSpared(car: Provable, sheet: ProveSheet): void {
	const circuit = car.circuit("converted");
	const { loom, branches } = circuit;
	const marked = (marks: readonly string[] | undefined) =>
		marks?.some((mark) => mark === "pyrotechnic" || mark === "high voltage") ?? false;
	const never = [...branches.keys()].filter((k) => {
		const { what, id, element } = branches[k]!.owner;
		if (what === "device") return marked(loom.parts.get(id)?.marks) && /draw|wake|element/.test(element);
		return marked(loom.wires.get(what === "wire" ? id : element)?.marks);
	});
	for (const { when, rows } of sheet.parts) {
		const point = operate(circuit, circuit.standing(when), { dead: true });
		for (const { question } of rows) {
			for (const id of [question.from, question.to]) expect(forbidden(loom, id), id).toBeUndefined();
			const x = new Float64Array(circuit.nodes.length);
			x[circuit.node(question.from)!]! += 1;
			x[circuit.node(question.to)!]! -= 1;
			// Between parts of the network no current flows at all.
			if (
				point.components.of[circuit.node(question.from)!] !== point.components.of[circuit.node(question.to)!]
			)
				continue;
			point.solve(x);
			for (const k of never) {
				const { a, b } = branches[k]!;
				const amps = Math.abs(voltsAt(x, a) - voltsAt(x, b)) * point.siemens[k]!;
				expect(amps, `${question.from} to ${question.to} through ${branches[k]!.owner.id}`).toBeLessThan(
					0.021,
				);
			}
		}
	}
}

test("whatever is marked, it is never measured", () => {
	const { converted } = demoCar("small");
	const parts = [...converted.parts.keys()].filter((id) => converted.parts.get(id)!.kind !== "battery");
	const wires = [...converted.wires.keys()];
	fc.assert(
		fc.property(
			fc.uniqueArray(fc.constantFrom(...parts), { maxLength: 3 }),
			fc.uniqueArray(fc.constantFrom(...wires), { maxLength: 3 }),
			fc.constantFrom("pyrotechnic", "high voltage"),
			(someParts, someWires, mark) => {
				const marked: Loom = {
					...converted,
					parts: new Map(
						[...converted.parts].map(([id, p]) => [id, someParts.includes(id) ? { ...p, marks: [mark] } : p]),
					),
					wires: new Map(
						[...converted.wires].map(([id, w]) => [id, someWires.includes(id) ? { ...w, marks: [mark] } : w]),
					),
				};
				const car = carOf(marked);
				expectSpared(car, proveSheet(car));
			},
		),
		{ seed: 5, numRuns: 25 },
	);
});
