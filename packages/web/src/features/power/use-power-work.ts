/** What was read and seen during the power-up: kept on the tablet, and written into the job's history. */
import type { Stage, StageReading } from "@loomwright/engine";
import { useLocalStorage } from "@mantine/hooks";
import { useCar } from "../../app/car.js";
import { useWriteEntry } from "../../server/hooks.js";
import { type Shown, shownWords } from "../meter/band.js";
import { type PowerWork, readingKey, seenKey } from "./stages.js";

const FRESH: PowerWork = { read: {}, seen: [], passed: [] };

export function usePowerWork() {
	const { job } = useCar();
	const [work, store] = useLocalStorage({
		key: `loomwright-power-${job.id}`,
		defaultValue: FRESH,
		getInitialValueInEffect: false,
	});
	const entry = useWriteEntry();
	const note = (text: string) => entry.write({ kind: "note", body: { text } });
	return {
		work,
		entry,
		take(stage: Stage, reading: StageReading, value: Shown) {
			store({ ...work, read: { ...work.read, [readingKey(stage, reading)]: value } });
			if (reading.question) entry.write({ kind: "reading", body: { ...reading.question, value } });
			else
				note(
					`Power-up, ${stage.title}: ${shownWords(value, reading.unit)} from ${reading.from} to ${reading.to}`,
				);
		},
		see(stage: Stage, text: string, seen: boolean) {
			const key = seenKey(stage, text);
			const others = work.seen.filter((one) => one !== key);
			store({ ...work, seen: seen ? [...others, key] : others });
		},
		/** Leaves a stage that holds behind. */
		pass(stage: Stage) {
			store({ ...work, passed: [...work.passed.filter((title) => title !== stage.title), stage.title] });
			note(`Power-up, ${stage.title}: holds. ${stage.mustBeTrue.join(" ")}`.trim());
		},
		/** Forgets all on this tablet; the history keeps it. */
		startOver() {
			store(FRESH);
			note("Power-up begun anew");
		},
	};
}

export type Power = ReturnType<typeof usePowerWork>;
