/** An entry of the history in words. */
import type { Loom } from "@loomwright/engine";
import type { Entry } from "../../server/types.js";
import { type ActWords, actWords } from "../find/act-words.js";
import type { Act } from "../find/acts.js";

const ACTS = new Set(["codes", "reading", "function", "bench", "reseated"]);

export function entryWords({ kind, body }: Pick<Entry, "kind" | "body">, loom: Loom): ActWords {
	if (ACTS.has(kind)) return actWords({ kind, body } as Act, loom);
	if (kind === "note") return { sort: "Note", text: (body as { text: string }).text };
	if (kind === "tables") {
		const { files } = body as { files: readonly { name: string }[] };
		return { sort: "Tables replaced", text: files.map(({ name }) => name).join(", ") };
	}
	return { sort: kind, text: "" };
}
