import { type Context, mustKnow, rowsOf } from "./context.js";
import { placeWords } from "./names.js";
import type { Condition } from "./types.js";

interface Draft {
	readonly id: string;
	readonly title: string;
	like: string;
	readonly settings: Map<string, string>;
}

/** Conditions by name out of `conditions.csv`. Whether a state fits its subject is checked in the devices room. */
export function readConditions(context: Context): ReadonlyMap<string, Condition> {
	const drafts = new Map<string, Draft>();
	const rows = rowsOf(context, "conditions", "condition");
	for (const row of rows) {
		const id = row.text("condition");
		if (id !== "") context.names.claim("condition", id, { file: row.file, row: row.row });
	}
	for (const row of rows) {
		const id = row.text("condition");
		const title = row.text("title");
		const draft = drafts.get(id) ?? { id, title, like: "", settings: new Map() };
		if (title !== "" && title !== draft.title) {
			row.refuse(
				"title",
				`"${title}" is not the title in the first row of ${id}`,
				`"${draft.title}", or empty`,
			);
		}
		const subject = row.text("subject");
		if (subject === "like") {
			mustKnow(context, row, "state", ["condition"], "the name of a condition");
		} else {
			mustKnow(context, row, "subject", ["part", "contact"], "a part, connector or contact, or like");
		}
		// A tab is in no name that the names room lets through.
		const taken = context.names.claim("setting", settingKey(id, subject), { file: row.file, row: row.row });
		if (taken && subject !== "") {
			row.refuse(
				"subject",
				`"${subject}" is already set for ${id} in ${placeWords(taken)}`,
				"each subject once",
			);
		}
		if (id === "" || row.faulty) continue;
		if (subject === "like") draft.like = row.text("state");
		else draft.settings.set(subject, row.text("state"));
		drafts.set(id, draft);
	}
	refuseCircles(context, drafts);
	return drafts;
}

/** The name under which a setting's row is kept. */
export function settingKey(condition: string, subject: string): string {
	return `${condition}\t${subject}`;
}

/** A condition that comes back to itself along `like` is an error, and is cut there. */
function refuseCircles(context: Context, drafts: ReadonlyMap<string, Draft>): void {
	for (const draft of drafts.values()) {
		const path = [draft.id];
		for (let next = draft.like; next !== ""; next = drafts.get(next)?.like ?? "") {
			if (!path.includes(next)) {
				path.push(next);
				continue;
			}
			if (next === draft.id) {
				const place = context.names.find("setting", settingKey(draft.id, "like"))!;
				const problem = `${[...path, next].join(" is like ")}: a circle`;
				context.errors.push({
					...place,
					column: "state",
					problem,
					wanted: "a condition that does not come back here",
				});
				draft.like = "";
			}
			break;
		}
	}
}
