/** The same tests on every database there is. */
import { join } from "node:path";
import { afterAll, beforeAll, describe, onTestFinished, type TestContext } from "vitest";
import { type PostgresServer, startPostgres } from "./postgres.test-helper.js";
import { Store, type StoreOptions } from "./store.js";
import { temporaryFolder } from "./temporary.test-helper.js";

export interface Place {
	/** An empty database of its own: a file name or an address. */
	empty(context: TestContext): Promise<string>;
	/** An opened store of its own. Its clock moves one second each time it is asked. */
	store(context: TestContext, options?: StoreOptions): Promise<{ store: Store; where: string }>;
}

/** Runs the tests once on the embedded database and once on PostgreSQL, where that can be had. */
export function onEveryDatabase(tests: (place: Place) => void): void {
	describe("embedded", () => tests(placeOf(async () => join(temporaryFolder(), "loomwright.db"))));
	describe("PostgreSQL", () => {
		let server: PostgresServer | undefined;
		let missing = "";
		beforeAll(async () => {
			try {
				server = await startPostgres();
			} catch (error) {
				missing = error instanceof Error ? error.message : String(error);
			}
		}, 60_000);
		afterAll(() => server?.stop(), 60_000);
		tests(
			placeOf(async (context) => {
				if (!server) return context.skip(`not tested on PostgreSQL: ${missing}`);
				return server.database();
			}),
		);
	});
}

function placeOf(empty: Place["empty"]): Place {
	return {
		empty,
		async store(context, options) {
			const where = await empty(context);
			let seconds = 0;
			const now = () => new Date(Date.UTC(2030, 0, 1, 8, 0, seconds++));
			const store = await Store.open(where, { now, ...options });
			onTestFinished(() => store.close());
			return { store, where };
		},
	};
}
