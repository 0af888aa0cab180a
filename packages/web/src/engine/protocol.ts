/** What the page and the engine's worker say to each other. */
import type {
	Change,
	Evidence,
	Explanation,
	Finding,
	Found,
	Loom,
	Misfit,
	ProveSheet,
	Question,
	Reading,
	RecipeStep,
	ShopRates,
	Stage,
	Supposed,
	sizeCircuits,
	TableError,
	travel,
	WhatIf,
	Which,
} from "@loomwright/engine";
import type { Sheet } from "../drawing/sheet/types.js";
import type { Known } from "../server/known.js";

/** A car as the page knows it: both looms and the recipe as data. */
export interface OpenedCar {
	readonly delivered: Loom;
	readonly converted: Loom;
	readonly recipe: readonly RecipeStep[];
	readonly misfits: readonly Misfit[];
}

/** What to draw. */
export interface SheetRequest {
	readonly which: Which;
	/** Contacts, wires, joints and parts. */
	readonly path: readonly string[];
	/** Condition whose switch and relay positions are drawn; empty: at rest. */
	readonly when: string;
	/** How many wires further than the path. */
	readonly further: number;
}

/** How one wire stands in a condition. */
export interface WireState {
	/** Volts against the body at the wire's two ends; undefined: open, or a loose end. */
	readonly from: Reading | undefined;
	readonly to: Reading | undefined;
	/** Amperes from its `from` end to its `to` end. */
	readonly amps: Reading | undefined;
	/** Why there is no answer, in words; empty where there is one. */
	readonly refused: string;
}

export type Sizes = ReturnType<typeof sizeCircuits> & {
	/** Wires and joints that the recipe makes or works on; none in the loom as delivered. */
	readonly worked: readonly string[];
};

/** What a change that is only supposed would do. */
export interface Supposition extends Omit<WhatIf, "car"> {
	/** Steps of the recipe that would not fit. */
	readonly misfits: readonly Misfit[];
	/** The tables that would be others. */
	readonly tables: Readonly<Record<string, string>>;
}

/** The recipe held against another car. */
export interface Transferred extends Pick<ReturnType<typeof travel>, "steps" | "left"> {
	/** A draft for the other car, as tables. */
	readonly files: Readonly<Record<string, string>>;
	/** Of the two cars as delivered. */
	readonly differences: readonly Change[];
}

export interface EngineMethods {
	open(files: Readonly<Record<string, string>>): OpenedCar;
	changes(): readonly Change[];
	findings(which: Which): readonly Finding[];
	reading(which: Which, question: Question): Reading;
	wire(which: Which, wire: string, when: string): WireState;
	/** @param refused readings that the technician will not take: others are proposed */
	find(evidence: Evidence, refused: readonly Question[], known: Known): Found;
	/** Why a fault is suspected and what would refute it. */
	explain(evidence: Evidence, fault: string, known: Known): Explanation;
	/** What the shop's own repairs make of the chances. */
	rates(which: Which, known: Known): ShopRates;
	/** Reads an evidence file. */
	evidence(text: string, file: string): Evidence;
	subcircuit(request: SheetRequest): Sheet;
	/** The sheet of readings before power, of the converted car; takes some seconds. */
	prove(): ProveSheet;
	/** Stages of the first power-up of the converted car. */
	powerUp(): readonly Stage[];
	sizes(which: Which): Sizes;
	/** The cells of the first row with that in its first column, by column; undefined: there is none. */
	row(table: string, row: string): Readonly<Record<string, string>> | undefined;
	whatIf(which: Which, supposed: Supposed): Supposition;
	/** @param tables of the other car */
	transfer(tables: Readonly<Record<string, string>>): Transferred;
	/** Contacts, wires and joints on the shortest way between two points. */
	between(which: Which, from: string, to: string): readonly string[];
}

export type MethodName = keyof EngineMethods;

export interface EngineCall {
	readonly id: number;
	readonly method: MethodName;
	readonly args: readonly unknown[];
}

/** `tables`: rows to mend; `refused`: a question that must not be answered; `engine`: all else. */
export type FaultKind = "tables" | "refused" | "engine";

export interface EngineFaultData {
	readonly kind: FaultKind;
	readonly message: string;
	readonly errors: readonly TableError[];
}

export type EngineReply =
	| { readonly id: number; readonly ok: true; readonly value: unknown }
	| { readonly id: number; readonly ok: false; readonly fault: EngineFaultData };
