/** An entry of the history in words. */
import type { Finding, Loom } from "@loomwright/engine";
import type { Entry, RepairEntry } from "../../server/types.js";
import { type ActWords, actWords } from "../find/act-words.js";
import type { Act } from "../find/acts.js";

const ACTS = new Set(["codes", "reading", "function", "bench", "reseated"]);

/** Kinds told by their step and their text. */
const PLAIN: Readonly<Record<string, string>> = {
	step: "Done",
	"sign-off": "Signed",
	photo: "Photo",
	hold: "Hold",
	lift: "Hold lifted",
	acceptance: "Accepted",
	correction: "Taken back",
};

export function entryWords({ kind, body }: Pick<Entry, "kind" | "body">, loom: Loom): ActWords {
	if (ACTS.has(kind)) return actWords({ kind, body } as Act, loom);
	const { step = "", text: said = "" } = body as { step?: string; text?: string };
	const about = (words: string) => [step, words].filter((word) => word !== "").join(": ");
	if (kind === "acceptance" && "finding" in (body as object)) {
		const { rule, where } = (body as { finding: Finding }).finding;
		return { sort: "Finding accepted", text: `${rule.replaceAll("-", " ")}, ${where}: ${said}` };
	}
	if (kind === "repair") {
		const { kind: fault, where } = body as RepairEntry;
		return { sort: "Repaired", text: `${fault}: ${where}` };
	}
	if (kind in PLAIN) return { sort: PLAIN[kind] as string, text: about(said) };
	if (kind === "note") return { sort: "Note", text: (body as { text: string }).text };
	if (kind === "tables") {
		const { files } = body as { files: readonly { name: string }[] };
		return { sort: "Tables replaced", text: files.map(({ name }) => name).join(", ") };
	}
	return { sort: kind, text: "" };
}
