/** The converted car's network with every step left out as a variant of it, and every fault it can have. */
import { Circuit } from "../circuit/index.js";
import { type Fault, faultSet } from "../faults/index.js";
import { leftOut, loomAs } from "../recipe/index.js";
import type { Provable } from "./types.js";

export function faultsOf({ tables, converted, touched }: Provable): { circuit: Circuit; faults: Fault[] } {
	const looms = leftOut(tables.delivered, tables.recipe, tables.newParts);
	const variants = new Map([...looms].map(([step, loom]) => [step, loomAs(loom, "converted")]));
	const circuit = new Circuit(converted, variants);
	const steps = new Map(tables.recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]));
	return { circuit, faults: faultSet({ circuit, loom: converted, touched, steps, plugsOff: true }) };
}
