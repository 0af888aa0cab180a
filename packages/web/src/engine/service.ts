/** The engine behind the page: opens one car and answers of it. Runs in the worker; tests call it directly. */
import {
	type Car,
	compareLooms,
	draftFiles,
	Finder,
	type Loom,
	openCar,
	operate,
	parseEvidence,
	powerUp,
	proveSheet,
	type Reading,
	ReadingError,
	readTable,
	runRules,
	settingsOf,
	sizeCircuits,
	supposedFiles,
	takeReading,
	travel,
	type Which,
	whatIf,
} from "@loomwright/engine";
import { buildSheet, type States } from "../drawing/sheet/build.js";
import { nameOf } from "../drawing/sheet/loom-index.js";
import { wayBetween } from "../drawing/sheet/way-between.js";
import type { Known } from "../server/known.js";
import type { EngineMethods, WireState } from "./protocol.js";

export function createEngine(): EngineMethods {
	let open: Car | undefined;
	let tables: Readonly<Record<string, string>> = {};
	const finders = new Map<Which, Finder>();
	const car = (): Car => {
		if (open === undefined) throw new Error("no car is open");
		return open;
	};
	const finderOf = (which: Which, { record, doneBy }: Known): Finder => {
		let finder = finders.get(which);
		if (finder === undefined) {
			finder = new Finder(car(), which);
			finders.set(which, finder);
		}
		finder.count(record, new Map(Object.entries(doneBy)));
		return finder;
	};
	return {
		open(files) {
			open = openCar(files);
			tables = files;
			finders.clear();
			const { delivered, converted, misfits } = open;
			return { delivered, converted, misfits, recipe: open.tables.recipe };
		},
		changes: () => compareLooms(car().delivered, car().converted),
		// Some rules hold the converted loom against the delivered one.
		findings: (which) =>
			runRules(car().circuit(which), which === "converted" ? car().circuit("delivered") : undefined),
		reading: (which, question) => takeReading(car().circuit(which), question),
		wire: (which, wire, when) => wireState(car(), which, wire, when),
		find: (evidence, refused, known) => finderOf(evidence.of, known).find(evidence, refused),
		explain: (evidence, fault, known) => finderOf(evidence.of, known).explain(evidence, fault),
		rates: (which, known) => finderOf(which, known).rates,
		evidence: parseEvidence,
		subcircuit({ which, path, when, further }) {
			return buildSheet(loomOf(car(), which), path, further, statesIn(car(), which, when));
		},
		prove: () => proveSheet(car()),
		powerUp: () => powerUp(car()),
		sizes(which) {
			const { wires, joints } = car().touched;
			const worked = which === "converted" ? [...wires.keys(), ...joints.keys()] : [];
			return { ...sizeCircuits(car().circuit(which)), worked };
		},
		row: (table, row) => cellsOf(tables[`${table}.csv`] ?? "", row),
		whatIf(which, supposed) {
			const { car: after, ...effects } = whatIf(car(), tables, supposed, which);
			const others = Object.entries(supposedFiles(tables, supposed)).filter(
				([name, text]) => tables[name] !== text,
			);
			return {
				...effects,
				misfits: which === "converted" ? after.misfits : [],
				tables: Object.fromEntries(others),
			};
		},
		transfer(files) {
			const { delivered, tables: own } = car();
			const other = openCar(files).delivered;
			const journey = travel(own, other);
			const { steps, left } = journey;
			return {
				steps,
				left,
				files: draftFiles(own, journey, other),
				differences: compareLooms(delivered, other),
			};
		},
		between: (which, from, to) => wayBetween(loomOf(car(), which), from, to),
	};
}

const loomOf = (car: Car, which: Which): Loom => (which === "delivered" ? car.delivered : car.converted);

function cellsOf(text: string, row: string): Readonly<Record<string, string>> | undefined {
	const { columns, rows } = readTable("", text, []);
	const found = rows.find(([first]) => first?.trim() === row);
	return (
		found && Object.fromEntries(columns.map((column, k) => [column.trim().toLowerCase(), found[k] ?? ""]))
	);
}

/** Positions of switches, relays and fuses in a condition; without one, as they are at rest. */
function statesIn(car: Car, which: Which, when: string): States {
	const loom = loomOf(car, which);
	const settings = when === "" ? new Map<string, string>() : settingsOf(loom, when);
	const pulled = when === "" ? new Set<string>() : pulledIn(car, which, when);
	return (id) => {
		const part = loom.parts.get(id);
		const state = settings.get(id) ?? part?.positions[0]?.name ?? "";
		return part?.kind === "relay" && pulled.has(id) ? "pulled in" : state;
	};
}

/** Relays whose coil holds the contact, in a condition. */
function pulledIn(car: Car, which: Which, when: string): Set<string> {
	const circuit = car.circuit(which);
	const { standing, states } = operate(circuit, circuit.standing(when));
	return new Set(
		standing.automata.flatMap(({ spec }, k) =>
			spec.element === "coil" && states[k] === 1 ? [spec.part] : [],
		),
	);
}

function wireState(car: Car, which: Which, id: string, when: string): WireState {
	const circuit = car.circuit(which);
	const wire = circuit.loom.wires.get(id);
	if (wire === undefined) throw new RangeError(`no wire '${id}' in this loom`);
	const [from, to] = [nameOf(wire.from), nameOf(wire.to)];
	const ask = (what: "volts" | "amps", a: string, b: string): Reading | undefined =>
		a === "" || b === "" ? undefined : takeReading(circuit, { what, from: a, to: b, when });
	try {
		const volts = { from: ask("volts", from, "body"), to: ask("volts", to, "body") };
		return { ...volts, amps: ask("amps", from, to), refused: "" };
	} catch (error) {
		if (!(error instanceof ReadingError)) throw error;
		return { from: undefined, to: undefined, amps: undefined, refused: error.message };
	}
}
