/**
 * The shop: a car's folder, the answers out of it as data, and the server of the stored jobs.
 *
 * The server, with its database, is loaded only when it is started, so that asking of a folder stays quick.
 */
import type { Known } from "./answers/find.js";
import type { RunningServer, StartOptions } from "./server/start.js";

export { type CompareAnswer, compareAnswer, compareSchema } from "./answers/compare.js";
export {
	BadInput,
	type ErrorsAnswer,
	errorsSchema,
	type InputError,
	inputErrors,
} from "./answers/errors.js";
export { type FindAnswer, findAnswer, findSchema, type Known } from "./answers/find.js";
export { highsSolver } from "./answers/highs-solver.js";
export { type PlanAnswer, planAnswer, planSchema } from "./answers/plan.js";
export { type PowerAnswer, powerAnswer, powerSchema } from "./answers/power.js";
export { type ProveAnswer, proveAnswer, proveSchema } from "./answers/prove.js";
export type { MisfitAnswer } from "./answers/question.js";
export { type ReadingAnswer, readingAnswer, readingSchema } from "./answers/reading.js";
export { type RulesAnswer, rulesAnswer, rulesSchema } from "./answers/rules.js";
export { parseSheetEntries } from "./answers/sheet-entries.js";
export { type SizeAnswer, sizeAnswer, sizeSchema } from "./answers/size.js";
export { type TransferAnswer, transferAnswer, transferSchema } from "./answers/transfer.js";
export { type WhatIfAnswer, whatIfAnswer, whatIfSchema } from "./answers/what-if.js";
export type { Copied } from "./copies/copies.js";
export { type CarFolder, readFolder, readText } from "./folder/read-folder.js";
export { KeptFolder } from "./kept/folder.js";
export { keptSheet } from "./kept/sheet.js";
export { databaseOf } from "./places.js";
export type { RunningServer, StartOptions } from "./server/start.js";

/**
 * What a shop's own repairs say, for finding.
 * @throws BadInput where there is no database in the folder
 */
export async function knownInShop(data: string): Promise<Known> {
	return (await import("./repairs/known.js")).knownInShop(data);
}

/** Backup, restore, export and import. */
export async function copies(): Promise<typeof import("./copies/copies.js")> {
	return import("./copies/copies.js");
}

/**
 * Opens the database, puts in the first car, and listens.
 * @throws an error with `toDo` when the port or the database cannot be had; BadInput or TableErrors when
 *   the folder is no car
 */
export async function startServer(options: StartOptions): Promise<RunningServer> {
	const { start } = await import("./server/start.js");
	return start(options);
}
