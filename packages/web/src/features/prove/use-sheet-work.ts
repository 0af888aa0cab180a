/** What was read on the prove sheet: kept on the tablet, each reading also written into the job's history. */
import type { SheetRow } from "@loomwright/engine";
import { useLocalStorage } from "@mantine/hooks";
import { useCar } from "../../app/car.js";
import { useWriteEntry } from "../../server/hooks.js";
import type { Shown } from "../meter/band.js";
import { type AllTaken, keyOf } from "./rows.js";

interface StoredWork {
	readonly taken: AllTaken;
	/** Condition in which the car stands now; empty: not known. */
	readonly standing: string;
}

const FRESH: StoredWork = { taken: {}, standing: "" };

export function useSheetWork() {
	const { job } = useCar();
	const [stored, store] = useLocalStorage({
		key: `loomwright-prove-${job.id}`,
		defaultValue: FRESH,
		getInitialValueInEffect: false,
	});
	const entry = useWriteEntry();
	const { taken } = stored;
	return {
		...stored,
		entry,
		take(row: SheetRow, value: Shown) {
			store({ ...stored, taken: { ...taken, [keyOf(row)]: { value } } });
			entry.write({ kind: "reading", body: { ...row.question, value, step: `prove/${row.number}` } });
		},
		leaveOut(row: SheetRow, reason: string) {
			store({ ...stored, taken: { ...taken, [keyOf(row)]: { leftOut: reason } } });
			const text = `Prove sheet, row ${row.number} (${row.from} to ${row.to}) left out: ${reason}`;
			entry.write({ kind: "note", body: { text, step: `prove/${row.number}` } });
		},
		stand: (when: string) => store({ ...stored, standing: when }),
		takeOver: (known: AllTaken) => store({ ...stored, taken: { ...known, ...taken } }),
		/** Forgets all on this tablet; the history keeps it. */
		startOver() {
			store(FRESH);
			entry.write({ kind: "note", body: { text: "Prove sheet begun anew" } });
		},
	};
}

export type SheetWork = ReturnType<typeof useSheetWork>;
