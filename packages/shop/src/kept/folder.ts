/**
 * A folder of what took long to compute, each piece under a name that says what it was computed from. Whatever goes
 * wrong with a file (missing, damaged, no room, not allowed) it is as if it had not been kept: never an error.
 */
import { createHash } from "node:crypto";
import {
	closeSync,
	fsyncSync,
	mkdirSync,
	openSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	statSync,
	utimesSync,
	writeSync,
} from "node:fs";
import { join } from "node:path";

/** Bytes of the sum at the head of each file, SHA-256. */
const SUM = 32;
/** A sheet of the demo car takes 0.8 megabytes, effects 0.3. */
const MOST_BYTES = 64 * 2 ** 20;
/** A file half written so long ago is of a program that was ended. */
const LEFT_BEHIND_MS = 3_600_000;
const ENDING = ".kept";

export class KeptFolder {
	/** @param mostBytes of all files together; those not used for longest give way */
	constructor(
		readonly folder: string,
		readonly mostBytes = MOST_BYTES,
	) {}

	/** Undefined where there is none that is whole. */
	read(name: string): Uint8Array | undefined {
		try {
			const file = this.#file(name);
			const bytes = readFileSync(file);
			const body = bytes.subarray(SUM);
			if (!sumOf(body).equals(bytes.subarray(0, SUM))) return undefined;
			const now = new Date();
			utimesSync(file, now, now);
			return body;
		} catch {
			return undefined;
		}
	}

	/** Writes beside and puts in place whole, so that no reader meets half a file. Says whether it is kept. */
	write(name: string, body: Uint8Array): boolean {
		try {
			mkdirSync(this.folder, { recursive: true });
			const file = this.#file(name);
			const beside = `${file}.${process.pid}.new`;
			try {
				writeWhole(beside, body);
				renameSync(beside, file);
			} finally {
				rmSync(beside, { force: true });
			}
			this.#makeRoom();
			return true;
		} catch {
			return false;
		}
	}

	#file(name: string): string {
		return join(this.folder, `${name}${ENDING}`);
	}

	#makeRoom(): void {
		const all = readdirSync(this.folder).flatMap((name) => {
			const file = join(this.folder, name);
			const { size, mtimeMs } = statSync(file, { throwIfNoEntry: false }) ?? { size: 0, mtimeMs: Date.now() };
			if (name.endsWith(".new") && mtimeMs < Date.now() - LEFT_BEHIND_MS) rmSync(file, { force: true });
			return name.endsWith(ENDING) ? [{ file, size, mtimeMs }] : [];
		});
		let room = this.mostBytes;
		for (const { file, size } of all.sort((a, b) => b.mtimeMs - a.mtimeMs)) {
			room -= size;
			if (room < 0) rmSync(file, { force: true });
		}
	}
}

function writeWhole(file: string, body: Uint8Array): void {
	const open = openSync(file, "w");
	try {
		writeSync(open, sumOf(body));
		for (let at = 0; at < body.length; ) at += writeSync(open, body, at);
		fsyncSync(open);
	} finally {
		closeSync(open);
	}
}

const sumOf = (body: Uint8Array): Buffer => createHash("sha256").update(body).digest();
