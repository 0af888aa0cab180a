/** What the server computes or keeps of choosing how a car's wiring is done. */
import type { Misfit, RowChange } from "@loomwright/engine";
import { ask, at, sent } from "./api.js";

/** Which version of the recipe the tables hold, since when, by whom; version 1 came with the job. */
export interface RecipeVersion {
	readonly version: number;
	/** ISO 8601, UTC. */
	readonly time: string;
	readonly person: string;
}

/** Which tables of a job one has. */
export interface RecipeState {
	readonly recipe: RecipeVersion;
	/** Place in the history of the entry that last replaced a table; 0: none did. */
	readonly replaced: number;
}

export interface KeptVersion extends RecipeVersion {
	readonly entry: string;
	/** Files that are not as in the version before. */
	readonly changed: readonly string[];
	/** False: it cannot be read any more. */
	readonly kept: boolean;
}

type Tables = Readonly<Record<string, string>>;

export interface Price {
	readonly minutes: number;
	/** In the shop's money. */
	readonly material: number;
	/** Minutes of fault finding that joints make likely. */
	readonly risk: number;
}

export interface Choice {
	readonly circuit: string;
	readonly title: string;
	readonly way: string;
	readonly text: string;
	readonly joints: number;
	readonly price: Price;
	readonly second: { readonly way: string; readonly text: string; readonly moreMinutes: number } | null;
	readonly options: number;
}

export interface Proposal {
	readonly possible: boolean;
	readonly hopeless: readonly { readonly circuit: string; readonly why: string }[];
	readonly way: string;
	readonly minutes: number;
	readonly bound: number;
	/** 0 to 1. */
	readonly gap: number;
	readonly price: Price;
	readonly byHand: { readonly minutes: number; readonly joints: number; readonly price: Price } | null;
	readonly choices: readonly Choice[];
	readonly shared: readonly string[];
	readonly alternatives: readonly {
		readonly way: string;
		readonly minutes: number | null;
		readonly joints: number;
	}[];
	readonly checks: readonly {
		readonly circuit: string;
		readonly reached: string;
		readonly ohms: number | null;
		readonly strays: readonly string[];
	}[];
	readonly steps: readonly {
		readonly step: string;
		readonly kind: string;
		readonly title: string;
		readonly place: string;
	}[];
	readonly files: Tables;
	readonly misfits: readonly PlainMisfit[];
}

type PlainMisfit = Pick<Misfit, "step" | "kind" | "row" | "column" | "problem" | "wanted">;

interface TableChanges {
	readonly name: string;
	readonly rows: readonly RowChange[];
}

/** What taking tables in would change. */
export interface Trial {
	readonly tables: readonly TableChanges[];
	readonly misfits: readonly PlainMisfit[];
}

export interface VersionChanges extends Trial {
	readonly changes: readonly { readonly kind: string; readonly text: string }[];
	readonly minutes: { readonly before: number; readonly after: number };
}

/** Takes seconds. */
export const askPlan = (job: string): Promise<Proposal> => ask(`${at(job)}/plan`, sent("POST", {}));

/** File name to text; null: the file goes. */
export type TableChangesWanted = Readonly<Record<string, string | null>>;

export const tryTables = (job: string, tables: TableChangesWanted): Promise<Trial> =>
	ask(`${at(job)}/tables/trial`, sent("POST", { tables }));

export const putTables = (job: string, tables: TableChangesWanted, person: string): Promise<unknown> =>
	ask(`${at(job)}/tables`, sent("PUT", { tables, person }));

export const readVersions = async (job: string): Promise<readonly KeptVersion[]> =>
	(await ask<{ versions: KeptVersion[] }>(`${at(job)}/recipe/versions`)).versions;

export const readVersion = (job: string, version: number): Promise<KeptVersion & { tables: Tables }> =>
	ask(`${at(job)}/recipe/versions/${version}`);

export const readVersionChanges = (job: string, version: number, since: number): Promise<VersionChanges> =>
	ask(`${at(job)}/recipe/versions/${version}/changes?since=${since}`);
