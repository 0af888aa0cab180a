import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { type RunningServer, start } from "./start.js";

/** The car of 23 wires whose numbers its README works out by hand. */
export const SMALL_CAR = fileURLToPath(new URL("../../../../demo/small", import.meta.url));

export interface Answer<Body> {
	readonly status: number;
	readonly headers: Headers;
	readonly body: Body;
}

export interface Client extends RunningServer {
	readonly data: string;
	/** Sends a request, with a body as JSON, and reads the answer as JSON. */
	// biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
	ask(method: string, path: string, body?: unknown): Promise<Answer<any>>;
}

/** A real server on a free port, with a database of its own that has the small car as job `a-tiny-car`. */
export async function smallServer(data = temporaryFolder()): Promise<Client> {
	const client = await openSmallServer(data);
	onTestFinished(client.close);
	return client;
}

/** As `smallServer`, to be closed by whoever opens it. */
export async function openSmallServer(data: string): Promise<Client> {
	const server = await start({ port: 0, host: "127.0.0.1", data, folder: SMALL_CAR });
	let open = true;
	const close = async () => {
		if (open) await server.close();
		open = false;
	};
	const ask = async (method: string, path: string, body?: unknown) => {
		const json = { headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
		const response = await fetch(server.address + path, { method, ...(body === undefined ? {} : json) });
		return { status: response.status, headers: response.headers, body: await response.json() };
	};
	return { ...server, close, data, ask };
}

export const JOB = "/api/v1/jobs/a-tiny-car";
