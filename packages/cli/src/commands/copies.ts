import { resolve } from "node:path";
import { type Copied, copies, databaseOf } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { printJson } from "./open.js";

export interface CopyOptions {
	readonly json?: true;
	readonly data: string;
	/** Address of a PostgreSQL database, instead of the file in `data`. */
	readonly database?: string;
}

export const backup = async (terminal: Terminal, file: string, options: CopyOptions): Promise<number> =>
	told(terminal, options, "Backed up and checked", await (await copies()).backup(databaseOf(options), file));

export const restore = async (terminal: Terminal, file: string, options: CopyOptions): Promise<number> =>
	told(terminal, options, "Restored and checked", await (await copies()).restore(databaseOf(options), file));

export async function exportJob(
	terminal: Terminal,
	job: string,
	file: string,
	options: CopyOptions,
): Promise<number> {
	const made = await (await copies()).exportJob(databaseOf(options), job, resolve(file));
	return told(terminal, options, `Job ${job} exported`, made);
}

export async function importJob(terminal: Terminal, file: string, options: CopyOptions): Promise<number> {
	const made = await (await copies()).importJob(databaseOf(options), file);
	return told(terminal, options, `Imported as job ${made.job}`, made);
}

function told(terminal: Terminal, { json }: CopyOptions, what: string, copied: Copied): number {
	if (json) printJson(terminal, copied);
	else terminal.out(`${what}: ${copied.file}\n${copied.bytes} bytes, SHA-256 ${copied.sha256}\n`);
	return EXIT.fine;
}
