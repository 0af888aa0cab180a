/** Readings that are proposed now, with their cautions. */
import type { Found, Question } from "@loomwright/engine";

export const keyOf = ({ what, from, to, when }: Question): string => [what, from, to, when].join(" ");

/** Is it one of those proposed? */
export const isOffered = ({ next, others }: Found, question: Question): boolean =>
	[...(next ? [next] : []), ...others].some((step) => keyOf(step.question) === keyOf(question));
