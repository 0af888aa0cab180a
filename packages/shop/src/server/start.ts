/** Starts the shop's server: database, first job, HTTP. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openCar } from "@loomwright/engine";
import { readFolder } from "../folder/read-folder.js";
import { DEMO_CAR, databaseOf, WEB_APP } from "../places.js";
import { shownName } from "../store/driver/open.js";
import { listPeople } from "../store/people.js";
import { Store } from "../store/store.js";
import { buildApp } from "./app.js";

export interface StartOptions {
	/** 0: any free port. */
	readonly port: number;
	readonly host: string;
	/** Folder of the database; made when missing. */
	readonly data: string;
	/** Address of a PostgreSQL database; left out: a file in `data`. */
	readonly database?: string | undefined;
	/** A car's folder to make a job of, unless there is one of it. Left out: the demo car, in a database without jobs. */
	readonly folder?: string | undefined;
	/** Folder of the built tablet app. */
	readonly web?: string | undefined;
	/** Files of the shop's own certificate and its key, in PEM; left out: plain http. */
	readonly cert?: string | undefined;
	readonly key?: string | undefined;
	/** Told of failures of the server itself. */
	readonly report?: ((error: unknown) => void) | undefined;
}

export interface RunningServer {
	/** `http://127.0.0.1:8080` */
	readonly address: string;
	/** The database file, or address without its password. */
	readonly database: string;
	/** Lets what is under way finish, then closes the database. */
	close(): Promise<void>;
}

/** The server cannot start: what is wrong, and what to do. */
export class StartError extends Error {
	override readonly name = "StartError";

	constructor(
		message: string,
		readonly toDo: string,
	) {
		super(message);
	}
}

/**
 * @throws StartError when it cannot listen; StoreError when the database cannot be opened; BadInput or
 *   TableErrors when the folder is no car
 */
export async function start(options: StartOptions): Promise<RunningServer> {
	const database = databaseOf(options);
	const store = await Store.open(database);
	try {
		await checkOwner(store, options.host);
		const tls = readTls(options);
		await firstJob(store, options.folder);
		const report = options.report ?? ((error) => console.error(error));
		const kept = join(options.data, "computed");
		const app = await buildApp({ store, web: options.web ?? WEB_APP, tls, report, kept }).catch((error) => {
			throw listenError(error, options);
		});
		try {
			const address = await app.listen({ port: options.port, host: options.host });
			return {
				address,
				database: shownName(database),
				close: async () => {
					await app.close();
					await store.close();
				},
			};
		} catch (error) {
			await app.close();
			throw listenError(error as NodeJS.ErrnoException, options);
		}
	} catch (error) {
		await store.close();
		throw error;
	}
}

const OWN_MACHINE = /^(127\.\d+\.\d+\.\d+|localhost|::1)$/;

/** Others are served only once someone answers for who may do what. @throws StartError */
async function checkOwner(store: Store, host: string): Promise<void> {
	if (OWN_MACHINE.test(host) || (await store.read(listPeople)).length > 0) return;
	throw new StartError(
		`the shop has no owner yet, so it is not served on ${host}`,
		"Start it without --host, open the page on this machine, set up the owner under People, then start it again with --host.",
	);
}

/** @throws StartError when the files cannot be read, or one of them is missing */
function readTls({ cert, key }: StartOptions): { cert: string; key: string } | undefined {
	if (cert === undefined && key === undefined) return undefined;
	if (cert === undefined || key === undefined)
		throw new StartError(
			"a certificate needs its key, and a key its certificate",
			"Give both --cert and --key.",
		);
	try {
		return { cert: readFileSync(cert, "utf8"), key: readFileSync(key, "utf8") };
	} catch (error) {
		throw new StartError(
			`the certificate or its key cannot be read: ${(error as Error).message}`,
			"Name two files in PEM with --cert and --key (docs/shop.md).",
		);
	}
}

/** @throws BadInput or TableErrors, before anything is stored */
async function firstJob(store: Store, folder: string | undefined): Promise<void> {
	const jobs = await store.jobs();
	if (folder === undefined && jobs.length > 0) return;
	const { folder: source, title, tables, practice } = readFolder(folder ?? DEMO_CAR);
	const there = (all: readonly { source: string }[]) =>
		folder === undefined ? all.length > 0 : all.some((job) => job.source === source);
	if (there(jobs)) return;
	openCar(tables);
	// Another server on the same database may have been quicker.
	await store.addJobUnless({ title, source, tables, practice }, there);
}

function listenError(error: NodeJS.ErrnoException, { port, host }: StartOptions): Error {
	if (error.code?.startsWith("ERR_OSSL") || error.code?.startsWith("ERR_SSL"))
		return new StartError(
			`certificate and key do not go together, or are not in PEM: ${error.message}`,
			"Name a certificate and its own key with --cert and --key (docs/shop.md).",
		);
	switch (error.code) {
		case "EADDRINUSE":
			return new StartError(
				`port ${port} on ${host} is in use by another program`,
				`Set another port in the environment, e.g. PORT=${port < 65000 ? port + 1 : 8080} npm start`,
			);
		case "EACCES":
			return new StartError(
				`port ${port} may not be used`,
				"Set a port of 1024 or above, e.g. PORT=8080 npm start",
			);
		case "EADDRNOTAVAIL":
		case "ENOTFOUND":
			return new StartError(
				`${host} is no address of this machine`,
				"Give one that is with --host: 127.0.0.1 for this machine alone, 0.0.0.0 for all of its networks.",
			);
		default:
			return error;
	}
}
