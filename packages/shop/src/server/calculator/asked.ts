/** What the server can be asked of a car, and its answer. */
import {
	type Car,
	type Evidence,
	parseEvidence,
	type Question,
	type SheetEntry,
	type Supposed,
	type Which,
} from "@loomwright/engine";
import { type CompareAnswer, compareAnswer } from "../../answers/compare.js";
import { type FindAnswer, findAnswer, type Known } from "../../answers/find.js";
import type { PlanAnswer } from "../../answers/plan.js";
import { type PowerAnswer, powerAnswer } from "../../answers/power.js";
import { type ProveAnswer, proveAnswer } from "../../answers/prove.js";
import { type ReadingAnswer, readingAnswer } from "../../answers/reading.js";
import { type RulesAnswer, rulesAnswer } from "../../answers/rules.js";
import { checkSheetEntries } from "../../answers/sheet-entries.js";
import { type SizeAnswer, sizeAnswer } from "../../answers/size.js";
import { type TransferAnswer, transferAnswer } from "../../answers/transfer.js";
import { type VersionChangesAnswer, versionChangesAnswer } from "../../answers/versions.js";
import { type WhatIfAnswer, whatIfAnswer } from "../../answers/what-if.js";
import { keptSheet } from "../../kept/sheet.js";
import type { EffectsKeeper } from "./effects-keeper.js";
import { keptPlan } from "./kept-plan.js";

export type Tables = Readonly<Record<string, string>>;

export interface Asked {
	changes: { readonly question: null; readonly answer: CompareAnswer };
	findings: { readonly question: { readonly of: Which }; readonly answer: RulesAnswer };
	reading: { readonly question: Question & { readonly of: Which }; readonly answer: ReadingAnswer };
	/** Evidence as JSON text. */
	find: {
		readonly question: { readonly evidence: string; readonly known: Known };
		readonly answer: FindAnswer;
	};
	prove: {
		readonly question: {
			readonly leastOhms: number;
			/** What was read on the sheet. */
			readonly entries: readonly SheetEntry[];
			readonly known: Known;
		};
		readonly answer: ProveAnswer;
	};
	power: { readonly question: null; readonly answer: PowerAnswer };
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
	/** Undefined: nothing is kept. */
	readonly keeper: EffectsKeeper | undefined;
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
	find: (opened, { evidence, known }) => find(opened, parseEvidence(evidence, "evidence"), known),
	prove(opened, { leastOhms, entries, known }) {
		const { car, tables, keeper } = opened;
		const sheet = keptSheet(car, tables, { leastOhms }, keeper?.kept);
		return proveAnswer(car, sheet, checkSheetEntries(sheet, entries), (evidence) =>
			find(opened, evidence, known),
		);
	},
	power: ({ car }) => powerAnswer(car),
	plan: ({ car, tables }) => keptPlan(car, tables),
	sizes: ({ car }, { of }) => sizeAnswer(car, of),
	"what-if": ({ car, tables }, { of, supposed }) => whatIfAnswer(car, tables, supposed, of),
	transfer: ({ car, open }, { to }) => transferAnswer(car, open(to)),
	"version-changes": ({ car, tables, open }, { since }) =>
		versionChangesAnswer({ car: open(since), tables: since }, { car, tables }),
};

function find({ car, tables, keeper }: Opened, evidence: Evidence, known: Known): FindAnswer {
	keeper?.give(car, tables, evidence);
	return findAnswer(car, evidence, known);
}
