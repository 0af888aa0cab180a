import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "./run.js";

/** The repository. */
export const ROOT = fileURLToPath(new URL("../../../", import.meta.url));

/** The car of 23 wires. */
export const SMALL_CAR = join(ROOT, "demo/small");

/** Runs a command line and keeps what it says. */
export async function said(
	words: readonly string[],
	{ columns = 100, colour = false, kept }: { columns?: number; colour?: boolean; kept?: string } = {},
): Promise<{ code: number; out: string; err: string }> {
	let out = "";
	let err = "";
	const terminal = {
		out: (text: string) => {
			out += text;
		},
		err: (text: string) => {
			err += text;
		},
		columns,
		colour,
		...(kept === undefined ? {} : { kept }),
	};
	const code = await run(words, terminal);
	return { code, out, err };
}
