/** Two servers on one PostgreSQL database: what comes in by one, the tablets of the other hear. */
import pg from "pg";
import { afterAll, beforeAll, expect, onTestFinished, test } from "vitest";
import { type PostgresServer, startPostgres } from "../store/postgres.test-helper.js";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { listen } from "./routes/listen.test-helper.js";
import { JOB, SMALL_CAR } from "./server.test-helper.js";
import { type RunningServer, start } from "./start.js";

let postgres: PostgresServer | undefined;
let missing = "";
beforeAll(async () => {
	postgres = await startPostgres().catch((error: unknown) => {
		missing = String(error);
		return undefined;
	});
}, 60_000);
afterAll(() => postgres?.stop(), 60_000);

async function server(database: string): Promise<RunningServer> {
	const data = temporaryFolder();
	const running = await start({ port: 0, host: "127.0.0.1", data, database, folder: SMALL_CAR });
	onTestFinished(running.close);
	return running;
}

async function note({ address }: RunningServer, text: string): Promise<void> {
	const response = await fetch(`${address}${JOB}/entries`, {
		method: "POST",
		headers: { "content-type": "application/json" },
		body: JSON.stringify({ kind: "note", body: { text }, person: "Kim" }),
	});
	expect(response.status).toBe(201);
}

test("each server's tablets hear of every entry once, also after the connection was cut", async (context) => {
	if (!postgres) return context.skip(`not tested on PostgreSQL: ${missing}`);
	const database = await postgres.database();
	const one = await server(database);
	const two = await server(database);
	const [a, b] = [await listen(one.address), await listen(two.address)];
	await note(one, "by the first");
	await note(two, "by the second");
	await note(one, "by the first again");
	const places = [1, 2, 3].map((place) => ({ job: "a-tiny-car", place }));
	expect(await a.events(3)).toEqual(places);
	expect(await b.events(3)).toEqual(places);

	// As when the database is started anew: whoever listens is told to ask again, and then hears as before.
	const admin = new pg.Client({ connectionString: database });
	await admin.connect();
	await admin.query("select pg_terminate_backend(pid) from pg_stat_activity where query like 'listen%'");
	await admin.end();
	await note(two, "while the first could not hear");
	await a.toEnd();
	const again = await listen(one.address);
	await note(two, "heard again");
	expect(await again.events(1)).toEqual([{ job: "a-tiny-car", place: 5 }]);
});

test("started at once on an empty database, they make one first job between them", async (context) => {
	if (!postgres) return context.skip(`not tested on PostgreSQL: ${missing}`);
	const database = await postgres.database();
	const [one] = await Promise.all([server(database), server(database), server(database)]);
	const { jobs } = (await (await fetch(`${one!.address}/api/v1/jobs`)).json()) as { jobs: { id: string }[] };
	expect(jobs.map(({ id }) => id)).toEqual(["a-tiny-car"]);
});
