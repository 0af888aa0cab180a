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

/** Circuits that nobody mends by this program. */
const LEAVE: Readonly<Record<string, string>> = {
	pyrotechnic: "Do not mend it here: restraint circuit, by the maker's procedure only.",
	"high voltage": "Do not mend it here: high voltage, trained persons only, by the maker's procedure.",
};

/** A finding with the cautions of the circuits on its path. Restraint and high-voltage circuits get no advice. */
export function finding(circuit: Circuit, rule: string, severity: Severity, said: Said): Finding {
	const path = said.path.filter((id, k) => id !== "" && id !== said.path[k - 1]);
	const { wires, parts } = circuit.loom;
	const marks = path.flatMap((id) => (wires.get(id) ?? parts.get(id))?.marks ?? []);
	const mend = LEAVE[marks.find((mark) => mark in LEAVE) ?? ""] ?? said.mend;
	return { rule, severity, ...said, mend, path, cautions: cautionsOf(circuit.loom, path) };
}
