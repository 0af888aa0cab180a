/** What is wrong with what was given, as data (docs/json.md). */
import { CircuitError, EvidenceError, ReadingError, TableErrors } from "@loomwright/engine";
import { z } from "zod";

export const inputErrorSchema = z.object({
	file: z.string().describe("empty: not in a file"),
	row: z.number().int().describe("as a spreadsheet counts, the header being 1; 0: the file as a whole"),
	column: z.string().describe("empty: the row as a whole"),
	problem: z.string(),
	wanted: z.string().describe("what would be right; empty where the problem says it"),
});

export type InputError = z.infer<typeof inputErrorSchema>;

export const errorsSchema = z.object({ errors: z.array(inputErrorSchema).min(1) });

export type ErrorsAnswer = z.infer<typeof errorsSchema>;

/** Something wrong with what was given that is not a table error: a folder, an option, a contact's name. */
export class BadInput extends Error {
	override readonly name = "BadInput";

	constructor(
		readonly problem: string,
		readonly wanted: string,
		readonly file = "",
	) {
		super(problem);
	}
}

/** Several errors at once, found on another thread. */
export class InputErrors extends Error {
	override readonly name = "InputErrors";

	constructor(readonly errors: readonly InputError[]) {
		super(errors.map((error) => error.problem).join("\n"));
	}
}

/** The errors in what was given that made an answer fail; undefined when the failure is our own. */
export function inputErrors(error: unknown): InputError[] | undefined {
	if (error instanceof TableErrors || error instanceof InputErrors)
		return error.errors.map((one) => ({ ...one }));
	if (error instanceof BadInput)
		return [{ file: error.file, row: 0, column: "", problem: error.problem, wanted: error.wanted }];
	if (error instanceof EvidenceError)
		return error.faults.map((problem) => ({
			file: error.file,
			row: 0,
			column: "",
			problem,
			wanted: "evidence as docs/evidence.md describes it",
		}));
	if (error instanceof ReadingError)
		return [{ file: "", row: 0, column: "", problem: error.message, wanted: "" }];
	if (error instanceof CircuitError)
		return [{ file: "", row: 0, column: "", problem: error.message, wanted: "a circuit that settles" }];
	return undefined;
}
