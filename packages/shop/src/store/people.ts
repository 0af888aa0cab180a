/** People, what the owner has set of their rights, and throttling of their PINs. */
import type { Kysely, Transaction } from "kysely";
import type { Ability } from "../people/abilities.js";
import type { Sort } from "../people/sorts.js";
import { StoreError } from "./error.js";
import type { PersonRow, Schema } from "./schema.js";

export type NewPerson = Pick<PersonRow, "id" | "name" | "role" | "pin">;

export const listPeople = (db: Kysely<Schema>): Promise<PersonRow[]> =>
	db.selectFrom("person").selectAll().orderBy("created").orderBy("id").execute();

export const findPerson = (db: Kysely<Schema>, id: string): Promise<PersonRow | undefined> =>
	db.selectFrom("person").selectAll().where("id", "=", id).executeTakeFirst();

/** @throws NameTaken */
export async function addPerson(
	trx: Transaction<Schema>,
	person: NewPerson,
	created: string,
): Promise<PersonRow> {
	const row: PersonRow = { ...person, active: 1, misses: 0, wait_until: "", created };
	await checkName(trx, person.name, person.id);
	await trx.insertInto("person").values(row).execute();
	return row;
}

/** @throws NameTaken */
export async function changePerson(
	trx: Transaction<Schema>,
	id: string,
	change: Partial<Pick<PersonRow, "name" | "role" | "pin" | "active">>,
): Promise<void> {
	if (change.name !== undefined) await checkName(trx, change.name, id);
	if (Object.keys(change).length === 0) return;
	await trx.updateTable("person").set(change).where("id", "=", id).execute();
}

/** Someone else goes by this name. */
export class NameTaken extends StoreError {}

async function checkName(trx: Transaction<Schema>, name: string, id: string): Promise<void> {
	const same = (await listPeople(trx)).find((one) => one.name.toLowerCase() === name.toLowerCase());
	if (same && same.id !== id)
		throw new NameTaken(`someone here is called ${name} already`, "Add an initial to the name.");
}

export async function abilitiesSet(db: Kysely<Schema>, person: string): Promise<Map<string, Ability>> {
	const rows = await db.selectFrom("ability").selectAll().where("person", "=", person).execute();
	return new Map(rows.map(({ sort, ability }) => [sort, ability]));
}

/** @param ability undefined: what follows from role and practice again */
export async function setAbility(
	trx: Transaction<Schema>,
	person: string,
	sort: Sort,
	ability: Ability | undefined,
): Promise<void> {
	if (ability === undefined)
		await trx.deleteFrom("ability").where("person", "=", person).where("sort", "=", sort).execute();
	else
		await trx
			.insertInto("ability")
			.values({ person, sort, ability })
			.onConflict((clash) => clash.columns(["person", "sort"]).doUpdateSet({ ability }))
			.execute();
}

/** Wrong PINs after which each next one must wait, twice as long every time. */
const FREE_MISSES = 5;
const FIRST_WAIT_MS = 30_000;
export const LONGEST_WAIT_MS = 15 * 60_000;

/**
 * Counts an attempt before the PIN is looked at, so that many at once gain nothing.
 * @returns seconds to wait; 0: look at the PIN
 */
export async function countAttempt(trx: Transaction<Schema>, person: PersonRow, now: Date): Promise<number> {
	const held = await trx
		.updateTable("person")
		.set((eb) => ({ misses: eb("misses", "+", 1) }))
		.where("id", "=", person.id)
		.returningAll()
		.executeTakeFirstOrThrow();
	const left = held.wait_until === "" ? 0 : Date.parse(held.wait_until) - now.getTime();
	// A clock that was far ahead must not lock anyone out for years.
	if (left > 0 && left <= LONGEST_WAIT_MS) {
		await trx
			.updateTable("person")
			.set({ misses: held.misses - 1 })
			.where("id", "=", person.id)
			.execute();
		return Math.ceil(left / 1000);
	}
	const over = held.misses - FREE_MISSES;
	const wait = over < 0 ? 0 : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(over, 10));
	const wait_until = wait === 0 ? "" : new Date(now.getTime() + wait).toISOString();
	await trx.updateTable("person").set({ wait_until }).where("id", "=", person.id).execute();
	return 0;
}

export async function forgetMisses(trx: Transaction<Schema>, person: string): Promise<void> {
	await trx.updateTable("person").set({ misses: 0, wait_until: "" }).where("id", "=", person).execute();
}
