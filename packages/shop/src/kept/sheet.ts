/** Prove sheets kept by the hash of the car's tables, what was asked, and the engine's code: computing one takes seconds. */
import { createHash } from "node:crypto";
import { type Car, type ProveSheet, proveSheet, type SheetOptions } from "@loomwright/engine";
import { sortedJson } from "../store/entry/hash.js";
import { codeVersion } from "./code-version.js";
import type { KeptFolder } from "./folder.js";

/**
 * @param tables those the car was opened from
 * @param kept undefined: nothing is kept, the sheet is computed
 * @throws CircuitError when the sound network does not settle
 */
export function keptSheet(
	car: Car,
	tables: Readonly<Record<string, string>>,
	options: SheetOptions,
	kept: KeptFolder | undefined,
): ProveSheet {
	if (kept === undefined) return proveSheet(car, options);
	const content = sortedJson({ code: codeVersion(), tables, options });
	const name = `sheet-${createHash("sha256").update(content, "utf8").digest("hex")}`;
	const known = kept.read(name);
	// The sum over its bytes has shown that it is what was written below.
	if (known) return JSON.parse(Buffer.from(known).toString("utf8")) as ProveSheet;
	const sheet = proveSheet(car, options);
	kept.write(name, Buffer.from(JSON.stringify(sheet), "utf8"));
	return sheet;
}
