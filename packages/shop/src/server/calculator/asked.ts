/** What the server can be asked of a car, and its answer. */
import { type Car, parseEvidence, type Question, type Which } from "@loomwright/engine";
import { type CompareAnswer, compareAnswer } from "../../answers/compare.js";
import { type FindAnswer, findAnswer } from "../../answers/find.js";
import { type ReadingAnswer, readingAnswer } from "../../answers/reading.js";
import { type RulesAnswer, rulesAnswer } from "../../answers/rules.js";

export interface Asked {
	changes: { readonly question: null; readonly answer: CompareAnswer };
	findings: { readonly question: { readonly of: Which }; readonly answer: RulesAnswer };
	reading: { readonly question: Question & { readonly of: Which }; readonly answer: ReadingAnswer };
	/** Evidence as JSON text. */
	find: { readonly question: { readonly evidence: string }; readonly answer: FindAnswer };
}

export type Topic = keyof Asked;

type Answers = { readonly [T in Topic]: (car: Car, question: Asked[T]["question"]) => Asked[T]["answer"] };

export const answers: Answers = {
	changes: (car) => compareAnswer(car),
	findings: (car, { of }) => rulesAnswer(car, of),
	reading: (car, question) => readingAnswer(car, question, question.of),
	find: (car, { evidence }) => findAnswer(car, parseEvidence(evidence, "evidence")),
};
