import type { Migration } from "kysely";
import { jobs } from "./0001-jobs.js";
import { causes } from "./0002-causes.js";
import { people } from "./0003-people.js";
import { attachments } from "./0004-attachments.js";
import { tableTexts } from "./0005-table-texts.js";

/** Every migration by its name, done in order of name. One that has been released is never edited. */
export const migrations: Readonly<Record<string, Migration>> = {
	"0001-jobs": jobs,
	"0002-causes": causes,
	"0003-people": people,
	"0004-attachments": attachments,
	"0005-table-texts": tableTexts,
};
