/** An act in words, for the list of what was seen. */
import { conditionWords, type Loom } from "@loomwright/engine";
import { amount } from "../../shared/words.js";
import { unitOf, WHATS } from "../reading/whats.js";
import type { Act } from "./acts.js";

export interface ActWords {
	/** What sort of act. */
	readonly sort: string;
	readonly text: string;
}

export function actWords(act: Act, loom: Loom): ActWords {
	switch (act.kind) {
		case "occasion":
			return { sort: "Note", text: act.body.note || "seen on another occasion" };
		case "reseated":
			return {
				sort: "Reseated",
				text: `${act.body.what}${labelOf(loom, act.body.what)} taken off and put back`,
			};
		case "codes": {
			const { codes, units } = act.body;
			const who = units.length === 0 ? "all units answered" : `answered: ${units.join(", ")}`;
			return {
				sort: "Codes read out",
				text: `${codes.length === 0 ? "none stored" : codes.join(", ")}; ${who}`,
			};
		}
		case "function": {
			const title = titleOf(loom, act.body.function);
			return { sort: act.body.holds ? "Works" : "Does not", text: title };
		}
		case "bench":
			return {
				sort: "Bench test",
				text: `${act.body.part}${labelOf(loom, act.body.part)} is ${act.body.good ? "good" : "bad"}`,
			};
		case "reading": {
			const { what, from, to, when, value } = act.body;
			const shown = value === "open" ? "open" : amount(value, unitOf(what));
			return {
				sort: WHATS.find((w) => w.value === what)!.label,
				text: `${shown} from ${from} to ${to}, ${conditionWords(loom, when)}`,
			};
		}
	}
}

const labelOf = (loom: Loom, part: string) => {
	const label = loom.parts.get(part)?.label ?? "";
	return label === "" ? "" : ` (${label})`;
};

/** A function's title stands in the first of its rows. */
export const titleOf = (loom: Loom, name: string): string =>
	loom.functions.find((row) => row.function === name && row.title !== "")?.title ?? name;
