import type { RecipeStep, Wire, WireEnd } from "../loom/index.js";

/**
 * The wire a step makes, after its row. What the row leaves empty is like the wire it
 * continues; the marks (a restraint circuit stays one) always go along.
 */
export function newWire(step: RecipeStep, from: WireEnd, to: WireEnd, continues?: Wire): Wire {
	const mm2 = step.mm2 ?? continues?.mm2;
	if (mm2 === undefined || step.metres === undefined)
		throw new Error(`step ${step.step}: a new wire was asked for without its size or length`);
	return {
		id: step.fresh,
		from,
		to,
		mm2,
		colours: step.colours.length > 0 ? step.colours : (continues?.colours ?? []),
		metres: step.metres,
		circuit: step.circuit || (continues?.circuit ?? ""),
		pair: step.pair || (continues?.pair ?? ""),
		bundle: step.bundle || (continues?.bundle ?? ""),
		marks: continues?.marks ?? [],
		note: "",
	};
}
