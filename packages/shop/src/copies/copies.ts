/** Backup, restore, export and import as files, each checked byte for byte before it is said to be done. */
import { createHash } from "node:crypto";
import { createReadStream, existsSync } from "node:fs";
import { mkdtemp, open, rename, rm } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { createInterface } from "node:readline";
import { BadInput } from "../answers/errors.js";
import { StoreError } from "../store/error.js";
import { Store } from "../store/store.js";

/** What was written or read. */
export interface Copied {
	/** Absolute. */
	readonly file: string;
	readonly bytes: number;
	/** SHA-256 of the file, hexadecimal. */
	readonly sha256: string;
}

export interface ImportedJob extends Copied {
	readonly job: string;
}

/**
 * Writes the whole shop into a file, also while the server runs. The file is restored once into a database made for
 * that, written out again and compared, before it gets its name.
 * @param where the database
 * @throws BadInput when the file is there; StoreError when it cannot be done
 */
export function backup(where: string, path: string): Promise<Copied> {
	return withStore(where, (store) =>
		writeNew(store, path, undefined, async (written, lines) => {
			const folder = await mkdtemp(join(dirname(path), ".loomwright-check-"));
			try {
				await withStore(join(folder, "check.db"), async (trial) => {
					await trial.restore(lines());
					await sameAgain(trial, undefined, written);
				});
			} finally {
				await rm(folder, { recursive: true, force: true });
			}
		}),
	);
}

/**
 * Puts a backup into an empty database, writes it out again and compares.
 * @throws StoreError when the database is not empty or the file is not whole; nothing is stored then
 */
export async function restore(where: string, path: string): Promise<Copied> {
	const file = await fingerprint(path);
	await withStore(where, async (store) => {
		await store.restore(linesOf(path));
		await sameAgain(store, undefined, file);
	});
	return file;
}

/** Writes one job into a file. @throws BadInput, StoreError */
export function exportJob(where: string, job: string, path: string): Promise<Copied> {
	return withStore(where, async (store) => {
		if (!(await store.job(job))) {
			const there = (await store.jobs()).map(({ id }) => id).join(", ");
			throw new BadInput(`there is no job '${job}'`, `one of ${there || "none; this shop has no job"}`);
		}
		return writeNew(store, path, job, async (written) => sameAgain(store, job, written));
	});
}

/** Puts a job of another shop into this one. @throws StoreError; nothing is stored then */
export async function importJob(where: string, path: string): Promise<ImportedJob> {
	const file = await fingerprint(path);
	return withStore(where, async (store) => ({ ...file, job: (await store.importJob(linesOf(path))).id }));
}

async function withStore<T>(where: string, act: (store: Store) => Promise<T>): Promise<T> {
	const store = await Store.open(where);
	try {
		return await act(store);
	} finally {
		await store.close();
	}
}

/** Written beside its place, forced to the disk, checked, and only then given its name. */
async function writeNew(
	store: Store,
	path: string,
	job: string | undefined,
	check: (written: Copied, lines: () => AsyncIterable<string>) => Promise<void>,
): Promise<Copied> {
	if (existsSync(path)) throw new BadInput("this file is there already", "the name of a new file", path);
	const half = `${path}.part`;
	try {
		const file = await open(half, "wx", 0o600);
		try {
			await store.dump(job, async (lines) => {
				for await (const line of lines) await file.write(line);
			});
			await file.sync();
		} finally {
			await file.close();
		}
		const written = await fingerprint(half);
		await check(written, () => linesOf(half));
		await rename(half, path);
		return { ...written, file: resolve(path) };
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code !== "EEXIST") await rm(half, { force: true });
		throw fileError(error, path);
	}
}

async function sameAgain(store: Store, job: string | undefined, file: Copied): Promise<void> {
	const hash = createHash("sha256");
	await store.dump(job, async (lines) => {
		for await (const line of lines) hash.update(line, "utf8");
	});
	if (hash.digest("hex") === file.sha256) return;
	throw new StoreError(
		"what is in the database is not what is in the file, byte for byte",
		"If the shop was at work meanwhile, do it again; else take another disk.",
	);
}

async function fingerprint(path: string): Promise<Copied> {
	const hash = createHash("sha256");
	let bytes = 0;
	try {
		for await (const piece of createReadStream(path)) {
			hash.update(piece as Buffer);
			bytes += (piece as Buffer).length;
		}
	} catch (error) {
		throw fileError(error, path);
	}
	return { file: resolve(path), bytes, sha256: hash.digest("hex") };
}

/** Opened only when the first line is asked for: lines read before anyone listens would be lost. */
async function* linesOf(path: string): AsyncGenerator<string> {
	const input = createReadStream(path, "utf8");
	try {
		yield* createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
	} finally {
		input.destroy();
	}
}

function fileError(error: unknown, path: string): unknown {
	switch ((error as NodeJS.ErrnoException).code) {
		case "ENOENT":
			return new BadInput("there is no such file or folder", "a file in a folder that is there", path);
		case "EACCES":
			return new BadInput("this place may not be read or written", "a file that you may read or write", path);
		case "EISDIR":
			return new BadInput("this is a folder", "the name of a file", path);
		case "ENOSPC":
			return new BadInput("the disk is full", "a disk with room for it", path);
		case "EEXIST":
			return new BadInput(
				"a copy that was not finished lies beside it",
				"another name, or first delete the file that ends in .part",
				path,
			);
		default:
			return error;
	}
}
