/**
 * A published network of sources and resistors written as the tables of a car, so that it goes the whole way:
 * CSV text, openCar, takeReading.
 *
 * A contact `c` of the network becomes the joint `Jc`, each part hangs between two joints on two short thick wires.
 * The published ohms are those from joint to joint: what the terminals take is left off the part's own value.
 */
import { type Car, openCar } from "../car.js";
import { BLADE, HEAVY_CRIMP } from "../circuit/contact-resistances.js";
import { takeReading, type What } from "../readings/index.js";
import { writeTable } from "../tables/index.js";

export interface NetworkPart {
	readonly name: string;
	readonly between: readonly [string, string];
	/** Volts of a source, the first contact positive. */
	readonly volts?: number;
	/** Ohms of a resistor. */
	readonly ohms?: number;
}

/** Ohms of a joint's end, the least a table may sensibly say; and of a wire of no length (circuit/network.ts). */
const TINY = 1e-6;
/** What stands between a joint and the pin of a resistor: joint, wire, crimp, blade. */
const END_OHMS = TINY + TINY + HEAVY_CRIMP.ohms + BLADE.ohms;
/** Largest battery that parts.csv takes, in volts: more stands as several in series. */
const MOST_VOLTS = 60;

const joint = (contact: string) => `J${contact}`;

/** Part ids that a part of the network becomes: several batteries in series where its volts are too many for one. */
function piecesOf(part: NetworkPart): { id: string; volts: number }[] {
	const count = Math.max(1, Math.ceil(Math.abs(part.volts ?? 0) / MOST_VOLTS));
	const volts = (part.volts ?? 0) / count;
	return Array.from({ length: count }, (_, k) => ({ id: k === 0 ? part.name : `${part.name}-${k}`, volts }));
}

/** The tables of a network, by file name. Conditions: `on`, and `off` with all sources disconnected. */
export function networkTables(network: readonly NetworkPart[]): Record<string, string> {
	const parts: string[][] = [];
	const contacts: string[][] = [];
	const wires: string[][] = [];
	const joints = new Set<string>();
	const conditions: string[][] = [];
	const hang = (id: string, end: string, to: string) => {
		wires.push([`W-${id}-${end}`, `${id}.${end}`, to, "240", "1 mm"]);
		joints.add(to);
	};
	for (const part of network) {
		const [from, to] = part.between.map(joint) as [string, string];
		if (part.ohms !== undefined) {
			parts.push([part.name, "resistor", `ohms=${part.ohms - 2 * END_OHMS}`]);
			contacts.push([`${part.name}.1`, part.name, "a"], [`${part.name}.2`, part.name, "b"]);
			conditions.push(["on", part.name, "fitted"], ["off", part.name, "fitted"]);
			hang(part.name, "1", from);
			hang(part.name, "2", to);
			continue;
		}
		const pieces = piecesOf(part);
		pieces.forEach(({ id, volts }, k) => {
			const [first, second] = volts < 0 ? ["-", "+"] : ["+", "-"];
			parts.push([id, "battery", `volts=${Math.abs(volts)}; ohms=${TINY}`]);
			contacts.push([`${id}.1`, id, first!], [`${id}.2`, id, second!]);
			conditions.push(["on", id, "on"], ["off", id, "off"]);
			hang(id, "1", k === 0 ? from : `M-${id}`);
			hang(id, "2", k === pieces.length - 1 ? to : `M-${pieces[k + 1]!.id}`);
		});
	}
	const table = (columns: string, rows: string[][]) => writeTable({ columns: columns.split(","), rows });
	return {
		"parts.csv": table("part,kind,values", parts),
		"contacts.csv": table("contact,part,role", contacts),
		"wires.csv": table("wire,from,to,size,length", wires),
		"joints.csv": table(
			"joint,kind,ohms",
			[...joints].map((id) => [id, "splice", String(TINY)]),
		),
		"conditions.csv": table("condition,subject,state", conditions),
	};
}

/** A network opened as a car, asked by the names of the network. */
export class NetworkCar {
	readonly #car: Car;
	constructor(readonly network: readonly NetworkPart[]) {
		this.#car = openCar(networkTables(network));
	}

	#read(what: What, from: string, to: string, when: "on" | "off"): number {
		const { value } = takeReading(this.#car.circuit("delivered"), { what, from, to, when });
		if (value === undefined) throw new Error(`${what} ${from} to ${to} reads open`);
		return value;
	}

	part(name: string): NetworkPart {
		return this.network.find((part) => part.name === name)!;
	}

	/** Volts of the first contact against the second. */
	volts(first: string, second: string): number {
		return this.#read("volts", joint(first), joint(second), "on");
	}

	/** Through a resistor from its first contact to its second; of a source, what it delivers out of its first. */
	amps(name: string): number {
		const [from, to] = this.part(name).ohms === undefined ? ["2", "1"] : ["1", "2"];
		return this.#read("amps", `${name}.${from}`, `${name}.${to}`, "on");
	}

	/** Ohms between two contacts with all sources disconnected. */
	ohms(first: string, second: string): number {
		return this.#read("ohms", joint(first), joint(second), "off");
	}

	/** Power in watts that the sources deliver together. */
	watts(): number {
		return this.network
			.filter((part) => part.volts !== undefined)
			.reduce((sum, part) => sum + this.volts(...part.between) * this.amps(part.name), 0);
	}
}
