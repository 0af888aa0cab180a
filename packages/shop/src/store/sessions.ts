/** Who is signed in, by the SHA-256 of a secret that only their tablet has; and guests' links, by that of theirs. */
import { createHash, randomBytes } from "node:crypto";
import type { Kysely, Transaction } from "kysely";
import type { GuestLinkRow, PersonRow, Schema } from "./schema.js";

/** 256 random bits. */
export const newSecret = (): string => randomBytes(32).toString("base64url");

export const secretHash = (secret: string): string =>
	createHash("sha256").update(secret, "utf8").digest("hex");

export type Session = { readonly person: PersonRow } | { readonly link: GuestLinkRow };

export interface NewSession {
	readonly person?: string;
	readonly guest_link?: string;
	/** ISO 8601, UTC. */
	readonly ends: string;
}

/** Opens a session and clears away those that have ended. Returns its secret. */
export async function openSession(
	trx: Transaction<Schema>,
	session: NewSession,
	now: string,
): Promise<string> {
	await trx.deleteFrom("session").where("ends", "<", now).execute();
	const secret = newSecret();
	await trx
		.insertInto("session")
		.values({
			token: secretHash(secret),
			person: session.person ?? null,
			guest_link: session.guest_link ?? null,
			ends: session.ends,
		})
		.execute();
	return secret;
}

/** The session of a secret, unless it, its person's leave to sign in, or its link has ended. */
export async function sessionOf(
	db: Kysely<Schema>,
	secret: string,
	now: string,
): Promise<Session | undefined> {
	const row = await db
		.selectFrom("session")
		.selectAll()
		.where("token", "=", secretHash(secret))
		.where("ends", ">", now)
		.executeTakeFirst();
	if (row?.person) {
		const person = await db
			.selectFrom("person")
			.selectAll()
			.where("id", "=", row.person)
			.where("active", "=", 1)
			.executeTakeFirst();
		return person && { person };
	}
	if (row?.guest_link) {
		const link = await db
			.selectFrom("guest_link")
			.selectAll()
			.where("id", "=", row.guest_link)
			.where("ends", ">", now)
			.executeTakeFirst();
		return link && { link };
	}
	return undefined;
}

export async function closeSession(trx: Transaction<Schema>, secret: string): Promise<void> {
	await trx.deleteFrom("session").where("token", "=", secretHash(secret)).execute();
}

/** Signs a person out everywhere. */
export async function closeSessionsOf(trx: Transaction<Schema>, person: string): Promise<void> {
	await trx.deleteFrom("session").where("person", "=", person).execute();
}

/** Stores a link. Returns its secret, which is kept nowhere else. */
export async function addLink(trx: Transaction<Schema>, link: Omit<GuestLinkRow, "token">): Promise<string> {
	const secret = newSecret();
	await trx
		.insertInto("guest_link")
		.values({ ...link, token: secretHash(secret) })
		.execute();
	return secret;
}

export const linkOf = (db: Kysely<Schema>, secret: string, now: string): Promise<GuestLinkRow | undefined> =>
	db
		.selectFrom("guest_link")
		.selectAll()
		.where("token", "=", secretHash(secret))
		.where("ends", ">", now)
		.executeTakeFirst();

export const linksOf = (db: Kysely<Schema>, job: string): Promise<GuestLinkRow[]> =>
	db.selectFrom("guest_link").selectAll().where("job", "=", job).orderBy("ends").orderBy("id").execute();

/** Ends a link of a job now. Returns whether there was one. */
export async function endLink(
	trx: Transaction<Schema>,
	job: string,
	id: string,
	now: string,
): Promise<boolean> {
	const { numUpdatedRows } = await trx
		.updateTable("guest_link")
		.set({ ends: now })
		.where("job", "=", job)
		.where("id", "=", id)
		.executeTakeFirst();
	return numUpdatedRows > 0n;
}
