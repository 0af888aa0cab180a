/** What the shop's server sends and takes; its own description is at /api/v1/openapi.json. */
import type { What } from "@loomwright/engine";

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
	| { readonly kind: "note"; readonly body: { readonly text: string } };

export interface ReadingEntry {
	readonly what: What;
	readonly from: string;
	readonly to: string;
	readonly when: string;
	readonly value: number | "open";
}

export type NewEntry = Written & { readonly id: string; readonly person: string };

/** An entry as stored. */
export interface Entry {
	readonly id: string;
	readonly time: string;
	readonly person: string;
	readonly kind: string;
	readonly body: unknown;
}
