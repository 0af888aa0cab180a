/** What takes current in the car, and between which points. */
import { branchAmps, type Circuit, type Operating, voltsAt } from "../../circuit/index.js";
import type { Part } from "../../loom/index.js";

export type LoadKind = "lighting" | "control unit" | "starter motor" | "terminal 50" | "other";

export interface Load {
	readonly part: Part;
	readonly kind: LoadKind;
	/** The element that takes the current; its two nodes are the load's. */
	readonly branch: number;
	/** What of the part: `terminal 50`, `ECU.A1 draw`; empty where the part is the load. */
	readonly element: string;
}

/** Element of each kind that takes the working current, and what limit holds for it. */
const ELEMENTS: Readonly<Record<string, readonly (readonly [element: string, kind: LoadKind])[]>> = {
	lamp: [["filament", "lighting"]],
	led: [["junction", "lighting"]],
	motor: [["element", "other"]],
	heater: [["element", "other"]],
	coil: [["element", "other"]],
	injector: [["element", "other"]],
	relay: [["coil", "other"]],
	"ignition coil": [["primary", "other"]],
	"lambda sensor": [["heater", "other"]],
	module: [["load", "other"]],
	starter: [
		["motor", "starter motor"],
		["solenoid", "terminal 50"],
	],
};

const cache = new WeakMap<Circuit, readonly Load[]>();

/** Every load of the car, in table order. */
export function loadsOf(circuit: Circuit): readonly Load[] {
	let loads = cache.get(circuit);
	if (loads === undefined) {
		loads = [...circuit.loom.parts.values()].flatMap((part) => loadsOfPart(circuit, part));
		cache.set(circuit, loads);
	}
	return loads;
}

/** Volts across a load, from its first node to its second. */
export function acrossLoad(point: Operating, load: Load): number {
	const { a, b } = point.circuit.branches[load.branch]!;
	return voltsAt(point.volts, a) - voltsAt(point.volts, b);
}

/** Does the starter turn? At rest its motor has the battery's volts across an open contact, and no current. */
export function cranks(circuit: Circuit, { point }: { readonly point: Operating }): boolean {
	return loadsOf(circuit).some(
		(load) => load.kind === "starter motor" && Math.abs(branchAmps(point, load.branch)) > 1,
	);
}

function loadsOfPart(circuit: Circuit, part: Part): Load[] {
	const loads: Load[] = [];
	for (const branch of circuit.branchesOf.get(part.id) ?? []) {
		const { what, element } = circuit.branches[branch]!.owner;
		if (what !== "device") continue;
		const found = ELEMENTS[part.kind]?.find(([name]) => name === element);
		if (found) loads.push({ part, kind: found[1], branch, element: part.kind === "starter" ? found[1] : "" });
		else if (part.kind === "control unit" && element.endsWith(" draw"))
			loads.push({ part, kind: "control unit", branch, element: element.slice(0, -" draw".length) });
	}
	return loads;
}
