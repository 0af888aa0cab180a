/** A car's network, with every step left out or done beside as a variant of it, and every fault it can have. */
import { Circuit } from "../circuit/index.js";
import type { Loom, LoomTables } from "../loom/index.js";
import { NOTHING_TOUCHED, type Stage, type Touched } from "../recipe/index.js";
import { faultSet } from "./fault-set.js";
import type { Fault } from "./types.js";
import { variantsOf } from "./variants.js";

/** What listing its faults needs of an opened car. */
export interface FaultyCar {
	readonly tables: LoomTables;
	readonly delivered: Loom;
	readonly converted: Loom;
	readonly touched: Touched;
}

/**
 * @param of which loom is on the car: as delivered, no hand was on it and no step can have gone wrong
 * @param plugsOff plugs will be pulled: what touches a wire must then stay with the wire
 */
export function faultsOf(
	car: FaultyCar,
	of: Stage,
	plugsOff: boolean,
): { readonly circuit: Circuit; readonly faults: readonly Fault[]; readonly touched: Touched } {
	if (of === "delivered") {
		const circuit = new Circuit(car.delivered);
		const context = { loom: car.delivered, touched: NOTHING_TOUCHED, steps: new Map() };
		return { circuit, faults: faultSet({ circuit, plugsOff, ...context }), touched: NOTHING_TOUCHED };
	}
	const { tables, converted: loom, touched } = car;
	const circuit = new Circuit(loom, variantsOf(tables));
	const steps = new Map(tables.recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]));
	return { circuit, faults: faultSet({ circuit, loom, touched, steps, plugsOff }), touched };
}
