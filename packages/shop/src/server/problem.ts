/** Every failure leaves the server as one shape of JSON: what is wrong, and what to do. */
import { formatTableError } from "@loomwright/engine";
import type { FastifyError, FastifyReply, FastifyRequest } from "fastify";
import { hasZodFastifySchemaValidationErrors } from "fastify-type-provider-zod";
import { z } from "zod";
import { type InputError, inputErrorSchema, inputErrors } from "../answers/errors.js";
import { EntryClash } from "../store/entry/append.js";
import { StoreError } from "../store/error.js";
import { Unstorable } from "../store/failure.js";
import { NameTaken } from "../store/people.js";

export const problemSchema = z.object({
	error: z.string().describe("what is wrong"),
	toDo: z.string().describe("what to do about it"),
	errors: z.array(inputErrorSchema).describe("by file, row and column; empty where that does not apply"),
});

export type ProblemAnswer = z.infer<typeof problemSchema>;

/** Thrown by a route to answer with a status of its own. */
export class Problem extends Error {
	override readonly name = "Problem";

	constructor(
		readonly status: number,
		message: string,
		readonly toDo: string,
		readonly errors: readonly InputError[] = [],
	) {
		super(message);
	}
}

/** Answers any failure. Our own are told to `report` and leave as 500 without their inner words. */
export function answerProblem(report: (error: unknown) => void) {
	return (error: FastifyError, _request: FastifyRequest, reply: FastifyReply): FastifyReply => {
		const problem = problemOf(error);
		if (problem.status >= 500) report(error);
		const { status, message, toDo, errors } = problem;
		return reply.code(status).send({ error: message, toDo, errors: [...errors] } satisfies ProblemAnswer);
	};
}

/** Any failure with the status and the words it leaves the server with. */
export function problemOf(thrown: unknown): Problem {
	const error = thrown as FastifyError;
	if (error instanceof Problem) return error;
	if (error instanceof EntryClash || error instanceof NameTaken)
		return new Problem(409, error.message, error.toDo);
	if (error instanceof Unstorable) return new Problem(400, error.message, error.toDo);
	if (error instanceof StoreError) return new Problem(503, error.message, error.toDo);
	const errors = inputErrors(error);
	if (errors) {
		const first = errors[0]!;
		const more = errors.length > 1 ? ` (and ${errors.length - 1} more)` : "";
		const what = first.file === "" ? first.problem : formatTableError(first);
		return new Problem(
			422,
			`${what}${more}`,
			first.wanted || "Mend what is named and send it again.",
			errors,
		);
	}
	if (hasZodFastifySchemaValidationErrors(error)) {
		const wrong = error.validation.map(
			(issue) => `${issue.instancePath.replace(/^\//, "").replaceAll("/", ".") || "body"}: ${issue.message}`,
		);
		return new Problem(400, wrong.join("; "), "Send what /api/v1/openapi.json describes.");
	}
	const half = HALF_SENT.get(error.code) ?? HALF_SENT.get(error.message);
	if (half) return half;
	if (error.statusCode !== undefined && error.statusCode < 500)
		return new Problem(error.statusCode, error.message, "Send what /api/v1/openapi.json describes.");
	return new Problem(500, "the server failed at this", "Look at what it printed where it was started.");
}

const cut = new Problem(400, "the upload broke off; nothing of it was kept", "Send it again.");
const large = new Problem(413, "the file is too large", "Send a smaller one: a photo may have 12 MiB.");

/** What the reader of uploads says, by its code or words. */
const HALF_SENT: ReadonlyMap<string, Problem> = new Map([
	["Unexpected end of form", cut],
	["Unexpected end of multipart data", cut],
	["Premature close", cut],
	["ECONNRESET", cut],
	["Part terminated early due to unexpected end of multipart data", cut],
	["FST_REQ_FILE_TOO_LARGE", large],
	["FST_ERR_CTP_BODY_TOO_LARGE", large],
]);

/** Responses every route may give besides its own. */
export const problemResponses = { "4xx": problemSchema, "5xx": problemSchema };
