import { BadInput } from "@loomwright/shop";
import { CommanderError } from "commander";
import { EXIT, reportFailure } from "./failure.js";
import { program } from "./program.js";
import type { Terminal } from "./terminal.js";

/**
 * Runs one command line.
 * @param words what stands after the program's name
 * @returns the exit code
 */
export async function run(words: readonly string[], terminal: Terminal): Promise<number> {
	const json = words.includes("--json");
	let code: number = EXIT.fine;
	try {
		const root = program(terminal, (own) => {
			code = own;
		});
		await root.parseAsync(words.length === 0 ? ["--help"] : words, { from: "user" });
		return code;
	} catch (error) {
		if (!(error instanceof CommanderError)) return reportFailure(error, terminal, json);
		if (error.exitCode === 0) return EXIT.fine;
		const problem = error.message.replace(/^error: /, "").replaceAll("\n", " ");
		return reportFailure(new BadInput(problem, "what --help describes"), terminal, json);
	}
}
