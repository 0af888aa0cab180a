/** The network engine: the sparse solver against general-purpose libraries, and all faults of a loom at once. */
import { faultFigures, resistanceFigures } from "../circuit/figures.js";
import { loomOf, networkOf } from "../circuit/looms.js";
import type { Figure } from "../figure.js";
import { compare } from "../linalg/compare.js";

/** Wanted nodes of the looms; the figures say how many there are. */
const SIZES = [500, 2000, 8000, 20000];
/** The one that the dense library gets as well. */
const DENSE = 1;
const CONTACTS = 500;

export async function* run(): AsyncGenerator<Figure> {
	yield* compare(
		SIZES.map((nodes) => () => networkOf(loomOf(nodes), nodes < 1000 ? "key-on" : "running")),
		DENSE,
	);
	yield* resistanceFigures(SIZES[DENSE]!, CONTACTS);
	yield* resistanceFigures(SIZES[2]!, CONTACTS);
	yield* faultFigures(console.error);
}
