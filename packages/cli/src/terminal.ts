/** What the command line has around it: where it writes to, where it keeps things; tests give their own. */
import { homedir } from "node:os";
import { join } from "node:path";

/** Where the command line writes to, so that tests can read it. */
export interface Terminal {
	out(text: string): void;
	err(text: string): void;
	/** Characters in a line. */
	readonly columns: number;
	/** Whether colours may be used. */
	readonly colour: boolean;
	/** Folder of what took long to compute; left out: nothing is kept. */
	readonly kept?: string;
}

/** Line length where output goes to a file or pipe and COLUMNS does not say. */
const PIPE_COLUMNS = 100;

/** The process's own. */
export function processTerminal(): Terminal {
	const { stdout, stderr, env } = process;
	// A reader that stops early (`| head`) is no failure.
	stdout.on("error", (error: NodeJS.ErrnoException) => {
		if (error.code !== "EPIPE") throw error;
		process.exit(0);
	});
	return {
		out: (text) => void stdout.write(text),
		err: (text) => void stderr.write(text),
		columns: stdout.columns || Number(env.COLUMNS) || PIPE_COLUMNS,
		colour: stdout.isTTY === true && !env.NO_COLOR,
		kept: join(env.XDG_CACHE_HOME || join(homedir(), ".cache"), "loomwright"),
	};
}
