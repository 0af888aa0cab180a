/** Tiny cars for the tests of proving: a loom by rows, its recipe already done. */
import { Circuit } from "../circuit/index.js";
import type { Loom, LoomTables } from "../loom/index.js";
import { NOTHING_TOUCHED } from "../recipe/index.js";
import { benchLoom, type Rows } from "../rules/support/bench-loom.test-helper.js";
import type { Provable } from "./types.js";

export function tinyCar(rows: Rows): Provable {
	return carOf(benchLoom(rows));
}

/** A car whose loom is as it is: no recipe, nothing worked on. */
export function carOf(loom: Loom): Provable {
	const newParts = { parts: new Map(), contacts: new Map(), joints: new Map() };
	const tables: LoomTables = { delivered: loom, newParts, recipe: [], errors: [], locate: () => undefined };
	const circuit = new Circuit(loom);
	return { tables, delivered: loom, converted: loom, touched: NOTHING_TOUCHED, circuit: () => circuit };
}
