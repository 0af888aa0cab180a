/** The case on the tablet: acts so far, and, of a practice case, those to come. Kept on the tablet until it is cleared. */
import type { Question, Which } from "@loomwright/engine";
import { useLocalStorage } from "@mantine/hooks";
import { useCar } from "../../app/car.js";
import { useWriteEntry } from "../../server/hooks.js";
import { actWords } from "./act-words.js";
import { type Act, evidenceOf } from "./acts.js";

const NONE: readonly Question[] = [];

/** Comes before a reading that is taken once more. */
export const READ_AGAIN: Act = { kind: "occasion", body: { note: "read once more" } };

export type Proving = "battery off" | "under power";

interface StoredCase {
	readonly which: Which;
	/** Title of the practice case; empty for a case of this shop. */
	readonly practice: string;
	readonly acts: readonly Act[];
	/** Acts of the practice case not yet shown. */
	readonly ahead: readonly Act[];
	/** Readings that were proposed and will not be taken. */
	readonly refused?: readonly Question[];
	/** The acts came from proving, with the battery off or with every fuse in. */
	readonly proving?: Proving;
}

const FRESH: StoredCase = { which: "converted", practice: "", acts: [], ahead: [] };

export function useCase() {
	const { job, car } = useCar();
	const [stored, store] = useLocalStorage({
		key: `loomwright-case-${job.id}`,
		defaultValue: FRESH,
		getInitialValueInEffect: false,
	});
	const entry = useWriteEntry();
	const { which, practice, acts, ahead, refused = NONE } = stored;
	return {
		...stored,
		entry,
		evidence: evidenceOf(acts, which, practice, stored.proving === "battery off" ? "off" : undefined),
		setWhich: (to: Which) => store({ ...stored, which: to }),
		/** Adds acts; outside of practice they go into the job's history. */
		add(...added: readonly Act[]) {
			store({ ...stored, acts: [...acts, ...added] });
			for (const act of added) if (practice === "" && act.kind !== "occasion") entry.write(act);
		},
		/** Takes the last act back. The history keeps it, with a note that it was taken back. */
		undo() {
			const last = acts.at(-1);
			if (!last) return;
			store({ ...stored, acts: acts.slice(0, -1), ahead: practice === "" ? [] : [last, ...ahead] });
			const { sort, text } = actWords(last, car[which]);
			if (practice === "" && last.kind !== "occasion")
				entry.write({ kind: "note", body: { text: `Taken back: ${sort}, ${text}` } });
		},
		/** Shows the next act of the practice case. */
		next() {
			const [first, ...rest] = ahead;
			if (first) store({ ...stored, acts: [...acts, first], ahead: rest });
		},
		begin: (title: string, of: Which, all: readonly Act[]) =>
			store({ which: of, practice: title, acts: all.slice(0, 1), ahead: all.slice(1) }),
		/** Takes what was read while proving, which is in the history already, in place of what stands here. */
		prove: (all: readonly Act[], proving: Proving) => store({ ...FRESH, acts: all, proving }),
		/** Asks for other readings than this one. */
		refuse: (question: Question) => store({ ...stored, refused: [...refused, question] }),
		refused,
		/** From now on readings under power may be offered. */
		powered: () => store({ ...stored, proving: "under power" }),
		clear: () => store({ ...FRESH, which }),
	};
}

export type Case = ReturnType<typeof useCase>;
