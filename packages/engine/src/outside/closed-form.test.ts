/** Effective resistances with a closed form, by ohmmeter on a car of resistors (reference/electrical/resistor-networks.csv). */
import { describe, expect, it } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import { NetworkCar, type NetworkPart } from "./network-car.test-helper.js";

/** Ohms that stand for the table's 1 ohm, so that no resistor is lost among the terminals. */
const UNIT = 100;
/** The table gives ten digits. */
const CLOSE = 1e-8;

interface Row {
	readonly id: string;
	readonly network: string;
	readonly pair: string;
	readonly ohms: number;
	readonly parts: readonly NetworkPart[];
}

function rowOf(row: Readonly<Record<string, string>>): Row {
	const parts = row.edges!.split(" ").map((edge, k): NetworkPart => {
		const [u, v, ohms] = edge.split(/[-:]/) as [string, string, string];
		return { name: `R${k}`, between: [u, v], ohms: Number(ohms) * UNIT };
	});
	return { id: row.id!, network: row.network!, pair: row.pair!, ohms: Number(row.value) * UNIT, parts };
}

const rows = reference("resistor-networks")
	.filter((row) => row.edges !== "" && row.value !== "")
	.map(rowOf);

const sums = rows.filter(({ pair }) => pair.startsWith("Foster"));

/** The two contacts that the words of a row mean; nodes are numbered as the table's edges are. */
function pairOf({ network, pair, parts }: Row): [string, string] {
	const last = String(Math.max(...parts.flatMap(({ between }) => between.map(Number))));
	const given = /^(\d+)(?: to |-)(\d+)/.exec(pair);
	if (given) return [given[1]!, given[2]!];
	const apart = /^(\d+) apart$/.exec(pair);
	if (apart) return ["0", apart[1]!];
	switch (pair) {
		case "any pair":
		case "hub to rim":
		case "both on the m side":
		case "adjacent at a corner":
			return ["0", "1"];
		case "across":
		case "opposite corners":
			return ["0", last];
		case "input to common":
			return ["1", "0"];
	}
	throw new Error(`${network}: which pair is '${pair}'?`);
}

describe("resistance between two contacts", () => {
	const pairs = rows.filter((row) => !sums.includes(row)).map((row) => ({ ...row, between: pairOf(row) }));

	it("there are networks of every family", () => {
		const families = [
			"tetrahedron",
			"cube",
			"complete K",
			"ring",
			"wheel",
			"ladder",
			"mesh",
			"hypercube",
			"bridge",
		];
		for (const family of families) expect(pairs.some(({ network }) => network.includes(family))).toBe(true);
	});

	it.each(pairs)("$id $network, $pair", ({ parts, between, ohms }) => {
		expect(Math.abs(new NetworkCar(parts).ohms(...between) / ohms - 1)).toBeLessThan(CLOSE);
	});
});

// R. M. Foster, 'The average impedance of an electrical network', 1949: over the edges, R_eff / R sums to nodes - 1.
it.each(sums)("$id $network: Foster's sum", ({ parts, ohms }) => {
	const car = new NetworkCar(parts);
	const sum = parts.reduce((total, part) => total + car.ohms(...part.between) / part.ohms!, 0);
	expect(Math.abs((sum * UNIT) / ohms - 1)).toBeLessThan(CLOSE);
});
