/** What finding takes of the shop besides the car. */
import { existsSync } from "node:fs";
import { BadInput } from "../answers/errors.js";
import type { Known } from "../answers/find.js";
import { databaseOf } from "../places.js";
import { Store } from "../store/store.js";
import { doneBy, RECORD_KINDS, recordOf, repairsOf } from "./record.js";

/**
 * What a shop's database knows, for a car that is none of its jobs.
 * @throws BadInput where there is no database, StoreError where it cannot be opened
 */
export async function knownInShop(data: string): Promise<Known> {
	const file = databaseOf({ data });
	if (!existsSync(file))
		throw new BadInput("there is no shop's database here", "the data folder of a shop", file);
	const store = await Store.open(file);
	try {
		return await knownOf(store, "");
	} finally {
		await store.close();
	}
}

/** @param job empty or unknown: of no job */
export async function knownOf(store: Store, job: string): Promise<Known> {
	const jobs = await store.entriesOfKinds(RECORD_KINDS);
	return { record: recordOf(repairsOf(jobs)), doneBy: doneBy(jobs.get(job) ?? []) };
}
