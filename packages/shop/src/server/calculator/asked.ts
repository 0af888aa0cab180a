/** What the server can be asked of a car, and its answer. */
import { type Car, parseEvidence, type Question, type Supposed, type Which } from "@loomwright/engine";
import { type CompareAnswer, compareAnswer } from "../../answers/compare.js";
import { type FindAnswer, findAnswer } from "../../answers/find.js";
import { type PlanAnswer, planAnswer } from "../../answers/plan.js";
import { type ReadingAnswer, readingAnswer } from "../../answers/reading.js";
import { type RulesAnswer, rulesAnswer } from "../../answers/rules.js";
import { type SizeAnswer, sizeAnswer } from "../../answers/size.js";
import { type TransferAnswer, transferAnswer } from "../../answers/transfer.js";
import { type VersionChangesAnswer, versionChangesAnswer } from "../../answers/versions.js";
import { type WhatIfAnswer, whatIfAnswer } from "../../answers/what-if.js";

export type Tables = Readonly<Record<string, string>>;

export interface Asked {
	changes: { readonly question: null; readonly answer: CompareAnswer };
	findings: { readonly question: { readonly of: Which }; readonly answer: RulesAnswer };
	reading: { readonly question: Question & { readonly of: Which }; readonly answer: ReadingAnswer };
	/** Evidence as JSON text. */
	find: { readonly question: { readonly evidence: string }; readonly answer: FindAnswer };
	plan: { readonly question: null; readonly answer: PlanAnswer };
	sizes: { readonly question: { readonly of: Which }; readonly answer: SizeAnswer };
	"what-if": {
		readonly question: { readonly of: Which; readonly supposed: Supposed };
		readonly answer: WhatIfAnswer;
	};
	/** Tables of the other car. */
	transfer: { readonly question: { readonly to: Tables }; readonly answer: TransferAnswer };
	/** Tables of the car with the earlier version of its recipe. */
	"version-changes": { readonly question: { readonly since: Tables }; readonly answer: VersionChangesAnswer };
}

export type Topic = keyof Asked;

/** The car asked of: its tables, and how another is opened. */
export interface Opened {
	readonly car: Car;
	readonly tables: Tables;
	readonly open: (tables: Tables) => Car;
}

type Answers = {
	readonly [T in Topic]: (
		opened: Opened,
		question: Asked[T]["question"],
	) => Asked[T]["answer"] | Promise<Asked[T]["answer"]>;
};

export const answers: Answers = {
	changes: ({ car }) => compareAnswer(car),
	findings: ({ car }, { of }) => rulesAnswer(car, of),
	reading: ({ car }, question) => readingAnswer(car, question, question.of),
	find: ({ car }, { evidence }) => findAnswer(car, parseEvidence(evidence, "evidence")),
	plan: ({ car, tables }) => planAnswer(car, tables),
	sizes: ({ car }, { of }) => sizeAnswer(car, of),
	"what-if": ({ car, tables }, { of, supposed }) => whatIfAnswer(car, tables, supposed, of),
	transfer: ({ car, open }, { to }) => transferAnswer(car, open(to)),
	"version-changes": ({ car, tables, open }, { since }) =>
		versionChangesAnswer({ car: open(since), tables: since }, { car, tables }),
};
