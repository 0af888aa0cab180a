/** What the shop's server sends and takes; its own description is at /api/v1/openapi.json. */
import type { Grounded, What } from "@loomwright/engine";

export interface JobSummary {
	readonly id: string;
	readonly title: string;
	/** ISO 8601, UTC. */
	readonly created: string;
}

export interface Job extends JobSummary {
	/** File name to text. */
	readonly tables: Readonly<Record<string, string>>;
}

/** An evidence file that comes with the car (docs/evidence.md). */
export interface Practice {
	readonly file: string;
	readonly title: string;
	readonly text: string;
}

/** What a person saw or did, as it goes into the job's history. */
export type Written =
	| {
			readonly kind: "codes";
			readonly body: { readonly codes: readonly string[]; readonly units: readonly string[] };
	  }
	| { readonly kind: "reading"; readonly body: ReadingEntry }
	| { readonly kind: "function"; readonly body: { readonly function: string; readonly holds: boolean } }
	| { readonly kind: "bench"; readonly body: { readonly part: string; readonly good: boolean } }
	| { readonly kind: "reseated"; readonly body: { readonly what: string } }
	| { readonly kind: "note"; readonly body: { readonly text: string; readonly step?: string } };

/** What a person answers for, and what shows it. */
type Signed =
	| { readonly kind: "photo"; readonly body: { readonly photo: string; readonly step?: string } }
	| { readonly kind: "step" | "sign-off"; readonly body: { readonly step: string } }
	| { readonly kind: "hold"; readonly body: { readonly step?: string; readonly text: string } }
	| { readonly kind: "lift"; readonly body: { readonly hold: string; readonly text: string } }
	| { readonly kind: "repair"; readonly body: RepairEntry }
	| { readonly kind: "acceptance"; readonly body: Grounded & { readonly text: string } }
	| { readonly kind: "correction"; readonly body: { readonly of: string; readonly text: string } };

export type Writable = Written | Signed;

export interface ReadingEntry {
	readonly what: What;
	readonly from: string;
	readonly to: string;
	readonly when: string;
	readonly value: number | "open";
	/** The step it belongs to, e.g. `prove/12`. */
	readonly step?: string;
}

/** A fault that was found and mended. */
export interface RepairEntry {
	readonly fault: string;
	readonly kind: string;
	readonly where: string;
	/** Steps of the recipe that had worked on it. */
	readonly steps: readonly string[];
	/** Who had done them; empty: not known, or nobody. */
	readonly worked: string;
}

/** The shop's own repairs, over all its jobs. */
export interface ShopRepairs {
	/** With a repair, or accepted. */
	readonly cars: number;
	readonly work: readonly { readonly person: string; readonly cars: number }[];
	readonly repairs: readonly (RepairEntry & {
		readonly entry: string;
		readonly job: string;
		/** Who found it. */
		readonly person: string;
		readonly time: string;
		/** Id of the correction that took it out; empty: it counts. */
		readonly takenBack: string;
	})[];
}

/** An entry with whose it is, and what its writer had seen: clocks have no say in what came first. */
export type NewEntry = Writable & {
	readonly id: string;
	readonly time: string;
	readonly person: string;
	/** Id of whoever was signed in; empty where nobody signs in. */
	readonly account: string;
	readonly device: string;
	/** The tablet's own count, from 1. */
	readonly counter: number;
	/** Last place of the job's history that this tablet had. */
	readonly seen: number;
};

/** An entry kept on this tablet until the server has it. */
export interface Waiting {
	readonly order: number;
	readonly job: string;
	readonly entry: NewEntry;
	/** Of a photo, until the server has the picture itself. */
	readonly picture?: Blob;
	/** Why the server refused it; empty: not sent yet. */
	readonly refused: string;
	readonly toDo: string;
}

export interface QueueResult {
	readonly id: string;
	readonly outcome: "added" | "there" | "refused";
	readonly error: string;
	readonly toDo: string;
}

export interface Session {
	/** Whether the shop has an owner. */
	readonly setUp: boolean;
	readonly who: {
		readonly role: "bench" | "owner" | "technician" | "apprentice" | "guest" | "nobody";
		readonly name: string;
		readonly account: string;
		readonly job: string;
	};
	readonly csrf: string;
	readonly people: readonly { readonly id: string; readonly name: string }[];
}

export interface Ability {
	readonly sort: string;
	readonly ability: "alone" | "second" | "not yet";
	readonly because: "role" | "practice" | "owner";
	readonly supervised: number;
	readonly critical: boolean;
}

export interface Person {
	readonly id: string;
	readonly name: string;
	readonly role: "owner" | "technician" | "apprentice";
	readonly active: boolean;
	readonly abilities: readonly Ability[];
}

export interface StepState {
	readonly step: string;
	readonly done: readonly { readonly person: string }[];
	readonly signatures: readonly { readonly person: string }[];
	readonly needs: number;
	readonly complete: boolean;
	readonly missing: string;
}

/** How the job stands, as the server derives it from the history. */
export interface JobState {
	readonly steps: readonly StepState[];
	readonly holds: readonly {
		readonly entry: string;
		readonly step: string;
		readonly text: string;
		readonly person: string;
		readonly lifted: string;
	}[];
	readonly clashes: readonly {
		readonly step: string;
		readonly entries: readonly string[];
		readonly people: readonly string[];
		readonly settled: string;
	}[];
	readonly acceptedFindings: readonly FindingAcceptance[];
}

/** A finding that a person accepted as it was then. */
export interface FindingAcceptance extends Grounded {
	readonly entry: string;
	readonly person: string;
	readonly role: string;
	readonly time: string;
	readonly text: string;
}

/** An entry as stored. */
export interface Entry {
	readonly id: string;
	/** In the job's history, from 1. */
	readonly place: number;
	readonly time: string;
	/** When the server stored it. */
	readonly stored: string;
	readonly person: string;
	/** Id of whoever was signed in; empty where nobody signs in. */
	readonly account: string;
	readonly kind: string;
	readonly body: unknown;
	/** Of the entry before it, and its own. */
	readonly previous: string;
	readonly hash: string;
}
