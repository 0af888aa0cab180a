/** Photos of a job, named by what is in them: no name from outside is ever used. */
import { createHash } from "node:crypto";
import type { Kysely, Transaction } from "kysely";
import { holdJob } from "./jobs.js";
import type { AttachmentRow, Schema } from "./schema.js";

export type Attachment = Pick<AttachmentRow, "type" | "bytes">;

export const attachmentId = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Keeps bytes once. Returns their id. */
export async function putAttachment(
	trx: Transaction<Schema>,
	job: string,
	type: string,
	bytes: Uint8Array,
	stored: string,
): Promise<string> {
	await holdJob(trx, job);
	const id = attachmentId(bytes);
	await trx
		.insertInto("attachment")
		.values({ job, id, type, stored, bytes })
		.onConflict((clash) => clash.columns(["job", "id"]).doNothing())
		.execute();
	return id;
}

export const attachmentOf = (db: Kysely<Schema>, job: string, id: string): Promise<Attachment | undefined> =>
	db
		.selectFrom("attachment")
		.select(["type", "bytes"])
		.where("job", "=", job)
		.where("id", "=", id)
		.executeTakeFirst();
