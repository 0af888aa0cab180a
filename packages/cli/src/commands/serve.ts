import { networkInterfaces } from "node:os";
import { startServer } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { printJson } from "./open.js";

interface Options {
	readonly json?: true;
	readonly port: number;
	readonly host: string;
	readonly data: string;
	readonly database?: string;
	readonly cert?: string;
	readonly key?: string;
}

/** Runs until the process is told to stop. */
export async function serve(
	terminal: Terminal,
	folder: string | undefined,
	{ json, ...where }: Options,
): Promise<number> {
	// Listened for from the start, so that being told to stop while starting is not missed.
	const stopped = toldToStop();
	const server = await startServer({ ...where, folder });
	if (json) printJson(terminal, { address: server.address, database: server.database });
	else
		terminal.out(
			`Loomwright is at ${addresses(server.address, where.host).join(" and ")} (Ctrl+C stops it)\n`,
		);
	await stopped;
	await server.close();
	return EXIT.fine;
}

/** The first signal lets the server finish; a second one ends the process at once. */
function toldToStop(): Promise<void> {
	return new Promise((resolve) => {
		for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
		if (process.env.npm_lifecycle_event !== undefined) whenLeftAlone(resolve);
	});
}

const LOOK_MS = 500;

/** npm tells only the shell between it and the server to stop: the shell's end is then the sign. */
function whenLeftAlone(stop: () => void): void {
	const parent = process.ppid;
	const look = setInterval(() => {
		if (process.ppid === parent) return;
		clearInterval(look);
		stop();
	}, LOOK_MS).unref();
}

/** Listening on all networks of the machine, the addresses that tablets reach it by. */
function addresses(address: string, host: string): string[] {
	if (host !== "0.0.0.0" && host !== "::") return [address];
	const { port, protocol } = new URL(address);
	const own = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
	return own.filter(({ family }) => family === "IPv4").map((one) => `${protocol}//${one.address}:${port}`);
}
