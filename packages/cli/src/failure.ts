/** Exit codes, and what is said when an answer cannot be given. */
import { type ErrorsAnswer, type InputError, inputErrors } from "@loomwright/shop";
import type { Terminal } from "./terminal.js";

export const EXIT = { fine: 0, findings: 1, badInput: 2 } as const;

/**
 * Says what is wrong, on stderr as text and with `json` on stdout as data.
 * @throws the error itself when it is a failure of our own
 */
export function reportFailure(error: unknown, terminal: Terminal, json: boolean): number {
	const errors = inputErrors(error) ?? toDoErrors(error);
	if (errors === undefined) throw error;
	for (const one of errors) terminal.err(`${errorText(one)}\n`);
	if (json) terminal.out(`${JSON.stringify({ errors } satisfies ErrorsAnswer, undefined, "\t")}\n`);
	return EXIT.badInput;
}

/** `wires.csv, row 4, column size: "x" is not a wire size. Wanted: ...`, leaving out what is not known. */
function errorText({ file, row, column, problem, wanted }: InputError): string {
	const where = [file, row > 0 ? `row ${row}` : "", column === "" ? "" : `column ${column}`];
	const place = where.filter((word) => word !== "").join(", ");
	return `${place === "" ? "" : `${place}: `}${problem}${wanted === "" ? "" : `. Wanted: ${wanted}`}`;
}

/** Failures of starting the server and of its database say what to do. */
function toDoErrors(error: unknown): InputError[] | undefined {
	if (!(error instanceof Error) || !("toDo" in error) || typeof error.toDo !== "string") return undefined;
	return [{ file: "", row: 0, column: "", problem: `${error.message}. ${error.toDo}`, wanted: "" }];
}
