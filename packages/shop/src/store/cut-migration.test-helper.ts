/** A program whose power goes in the middle of its second migration. Argument: database. */
import { type Kysely, sql } from "kysely";
import { openDatabase } from "./driver/open.js";
import { migrate } from "./migrate.js";
import { migrations } from "./migrations/index.js";

const [where] = process.argv.slice(2) as [string];
const cut = {
	async up(db: Kysely<unknown>) {
		await sql`create table half_done (id text)`.execute(db);
		await sql`alter table job add column half text`.execute(db);
		process.kill(process.pid, "SIGKILL");
	},
};
await migrate(openDatabase(where), "it", false, {
	"0001-jobs": migrations["0001-jobs"]!,
	"0002-causes": cut,
});
