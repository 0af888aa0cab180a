import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { NewJob } from "./jobs.js";
import { Store } from "./store.js";

/** A folder of its own, gone after the test. */
export function temporaryFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}

/** A real database file in a folder of its own. Its clock moves one second each time it is asked. */
export async function temporaryStore(): Promise<{ store: Store; file: string }> {
	const file = join(temporaryFolder(), "loomwright.db");
	let seconds = 0;
	const store = await Store.open(file, { now: () => new Date(Date.UTC(2030, 0, 1, 8, 0, seconds++)) });
	onTestFinished(() => store.close());
	return { store, file };
}

/** A job with whatever text as its tables. */
export const someJob: NewJob = {
	title: "Camper, first car",
	source: "/cars/camper",
	tables: { "parts.csv": "part,kind\n", "wires.csv": "wire\n" },
	practice: { "p1.json": "{}" },
};
