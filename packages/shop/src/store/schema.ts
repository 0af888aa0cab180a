/** The tables of the shop's database, as the queries see them. Made by store/migrations. */
import type { Generated } from "kysely";

/** One car in the shop. */
export interface JobRow {
	/** Short name used in addresses, e.g. `main`. */
	readonly id: string;
	readonly title: string;
	/** Folder the job was taken from, absolute; empty when it came otherwise. */
	readonly source: string;
	/** ISO 8601, UTC. */
	readonly created: string;
	/** What the hashes of its history call it: its id where it was made, also after it was brought here from there. */
	readonly chain: string;
}

/** A table of a job's car (docs/tables.md), as it stands now. */
export interface TableFileRow {
	readonly job: string;
	/** `wires.csv` */
	readonly name: string;
	readonly text: string;
}

/** An evidence file that comes with the car, to practise on (docs/evidence.md). */
export interface PracticeFileRow {
	readonly job: string;
	readonly name: string;
	readonly text: string;
}

/** One line of a job's history. Rows are never changed or deleted; the database refuses it. */
export interface EntryRow {
	/** Order of arrival over all jobs. */
	readonly number: Generated<number>;
	/** Given by whoever wrote it, so that sending it twice stores it once. */
	readonly id: string;
	readonly job: string;
	/** Place in the job's chain, from 1. */
	readonly place: number;
	/** When it happened, ISO 8601, UTC. */
	readonly time: string;
	/** When it was stored, ISO 8601, UTC. */
	readonly stored: string;
	readonly person: string;
	readonly kind: string;
	/** JSON with sorted keys. */
	readonly body: string;
	/** Hash of the entry before it in the job; empty for the first. */
	readonly previous: string;
	/** SHA-256 over the entry and `previous`, hexadecimal (store/entry/hash.ts). */
	readonly hash: string;
	/** Which columns the hash covers: 1 or 2. */
	readonly form: number;
	/** Id of the person who was signed in; empty where nobody signs in. */
	readonly account: string;
	/** The tablet it was written on; empty when not given. */
	readonly device: string;
	/** The tablet's own count of what was written on it, from 1; 0 when not given. */
	readonly counter: number;
	/** The last place of the job's history the writer had seen. */
	readonly seen: number;
	/** By what right it was written, as it was then: JSON, or empty. */
	readonly standing: string;
}

/** Someone who works here. Never deleted: the history names them. */
export interface PersonRow {
	readonly id: string;
	readonly name: string;
	readonly role: "owner" | "technician" | "apprentice";
	/** Argon2id hash in PHC form. */
	readonly pin: string;
	/** 0: may no longer sign in. */
	readonly active: number;
	/** Wrong PINs since the last right one. */
	readonly misses: number;
	/** No PIN is looked at before this; ISO 8601 or empty. */
	readonly wait_until: string;
	readonly created: string;
}

/** What the owner has set of a person's rights; what is not set follows from role and practice. */
export interface AbilityRow {
	readonly person: string;
	readonly sort: string;
	readonly ability: "alone" | "second" | "not yet";
}

/** Lets a customer look at one job until it ends. */
export interface GuestLinkRow {
	readonly id: string;
	/** SHA-256 of the link's secret. */
	readonly token: string;
	readonly job: string;
	readonly name: string;
	/** Name of who made it. */
	readonly made_by: string;
	readonly ends: string;
}

export interface SessionRow {
	/** SHA-256 of the cookie. */
	readonly token: string;
	readonly person: string | null;
	readonly guest_link: string | null;
	readonly ends: string;
}

/** A photo. Rows are never changed or deleted; the database refuses it. */
export interface AttachmentRow {
	readonly job: string;
	/** SHA-256 of the bytes, hexadecimal. */
	readonly id: string;
	/** `image/jpeg` ..., told from the bytes. */
	readonly type: string;
	readonly stored: string;
	readonly bytes: Uint8Array;
}

/** A table's text that was replaced. Rows are never changed or deleted; the database refuses it. */
export interface TableTextRow {
	readonly job: string;
	/** Fingerprint of the text, as entries of the kind `tables` name it. */
	readonly id: string;
	readonly text: string;
}

export interface Schema {
	job: JobRow;
	table_file: TableFileRow;
	practice_file: PracticeFileRow;
	entry: EntryRow;
	person: PersonRow;
	ability: AbilityRow;
	guest_link: GuestLinkRow;
	session: SessionRow;
	attachment: AttachmentRow;
	table_text: TableTextRow;
}
