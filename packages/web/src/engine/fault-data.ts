/** Errors of the engine as data, to carry across the worker's boundary. */
import { ReadingError, TableErrors } from "@loomwright/engine";
import type { EngineFaultData } from "./protocol.js";

export function faultData(error: unknown): EngineFaultData {
	if (error instanceof TableErrors) return { kind: "tables", message: error.message, errors: error.errors };
	const message = error instanceof Error ? error.message : String(error);
	return { kind: error instanceof ReadingError ? "refused" : "engine", message, errors: [] };
}
