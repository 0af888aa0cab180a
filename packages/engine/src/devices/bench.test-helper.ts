/** A few devices wired together by short thick wires, in as few words as a test can say it. */
import { type Car, openCar } from "../car.js";
import { operate } from "../circuit/index.js";
import { type Reading, takeReading, type What } from "../readings/index.js";
import { writeTable } from "../tables/index.js";

export interface Bench {
	/** `id: "kind; name=value"`, a switch with its positions after a bar: `S: "switch | off:; on:1-2"`. */
	readonly parts: Readonly<Record<string, string>>;
	/** `PART.PIN: "role"` or `"role; name=value"`; `"role @X1 3"` in cavity 3 of connector X1. */
	readonly pins: Readonly<Record<string, string>>;
	/** Each line joins all it names: pins, and names without a dot, which become splices; `GND` is a ground point. */
	readonly nets: readonly string[];
	/** Condition to settings. */
	readonly when: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

const cut = (text: string, at: string): [string, string] => {
	const k = text.indexOf(at);
	return k < 0 ? [text.trim(), ""] : [text.slice(0, k).trim(), text.slice(k + 1).trim()];
};

/** The tables of a bench, by file name. */
export function benchTables({ parts, pins, nets, when }: Bench): Record<string, string> {
	const table = (columns: string, rows: string[][]) => writeTable({ columns: columns.split(","), rows });
	const joints = new Set<string>();
	const wires: string[][] = [];
	nets.forEach((net, k) => {
		const names = net.split(/\s+/);
		const joint = names.find((name) => !name.includes(".")) ?? `N${k}`;
		joints.add(joint);
		for (const name of names)
			if (name.includes(".")) wires.push([`W${wires.length}`, name, joint, "16", "10 mm"]);
	});
	return {
		"parts.csv": table(
			"part,kind,values,positions",
			Object.entries(parts).map(([id, text]) => {
				const [head, positions] = cut(text, "|");
				const [kind, values] = cut(head, ";");
				return [id, kind, values, positions];
			}),
		),
		"contacts.csv": table(
			"contact,part,connector,cavity,role,values",
			Object.entries(pins).map(([id, text]) => {
				const [head, values] = cut(text, ";");
				const [role, seat] = cut(head, "@");
				const [connector, cavity] = cut(seat, " ");
				return [id, cut(id, ".")[0], connector, cavity, role, values];
			}),
		),
		"joints.csv": table(
			"joint,kind",
			[...joints].map((id) => [id, id === "GND" ? "ground" : "splice"]),
		),
		"wires.csv": table("wire,from,to,size,length", wires),
		"conditions.csv": table(
			"condition,subject,state",
			Object.entries(when).flatMap(([id, settings]) =>
				Object.entries(settings).map(([subject, state]) => [id, subject, state]),
			),
		),
	};
}

/** A bench opened as a car. Wires, terminals and splices together stay below 10 milliohm. */
export class OnBench {
	readonly car: Car;
	constructor(bench: Bench) {
		this.car = openCar(benchTables(bench));
	}

	read(what: What, from: string, to: string, when: string): Reading {
		return takeReading(this.car.circuit("delivered"), { what, from, to, when });
	}

	/** NaN where it reads open. */
	volts(from: string, to: string, when: string): number {
		return this.read("volts", from, to, when).value ?? Number.NaN;
	}
	amps(from: string, to: string, when: string): number {
		return this.read("amps", from, to, when).value ?? Number.NaN;
	}
	ohms(from: string, to: string, when: string): number {
		return this.read("ohms", from, to, when).value ?? Number.NaN;
	}

	/** Name of the state in which an element of a part has settled. */
	state(part: string, when: string): string {
		const circuit = this.car.circuit("delivered");
		const standing = circuit.standing(when);
		const at = standing.automata.findIndex(({ spec }) => spec.part === part);
		return standing.automata[at]!.spec.states[operate(circuit, standing).states[at]!]!;
	}
}

/** Relative difference from a number worked out by hand. */
export const off = (value: number, byHand: number): number => Math.abs(value / byHand - 1);
