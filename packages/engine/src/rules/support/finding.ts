import type { Circuit } from "../../circuit/index.js";
import type { Finding, Severity } from "../types.js";
import { cautionsOf } from "./cautions.js";

interface Said {
	readonly where: string;
	readonly why: string;
	readonly mend: string;
	/** Ids in order from supply to ground. */
	readonly path: readonly string[];
}

/** A finding with the cautions of the circuits on its path. */
export function finding(circuit: Circuit, rule: string, severity: Severity, said: Said): Finding {
	const path = said.path.filter((id, k) => id !== "" && id !== said.path[k - 1]);
	return { rule, severity, ...said, path, cautions: cautionsOf(circuit.loom, path) };
}
