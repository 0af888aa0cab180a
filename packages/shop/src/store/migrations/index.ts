import type { Migration } from "kysely";
import { jobs } from "./0001-jobs.js";

/** Every migration by its name, done in order of name. One that has been released is never edited. */
export const migrations: Readonly<Record<string, Migration>> = {
	"0001-jobs": jobs,
};
