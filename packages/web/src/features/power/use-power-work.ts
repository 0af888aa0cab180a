/** What was read and seen during the power-up: kept on the tablet, and written into the job's history. */
import type { Stage, StageReading } from "@loomwright/engine";
import { useLocalStorage } from "@mantine/hooks";
import { useCar } from "../../app/car.js";
import { useWriteEntry } from "../../server/hooks.js";
import { type Shown, shownWords } from "../meter/band.js";
import { type PowerWork, readingKey, seenKey } from "./stages.js";

/** Characters that a step's name may have. */
const LONGEST = 200;

/** A stage as the history calls it; two people answer for it. */
export const stepOf = ({ title }: Stage): string => `power/${title}`.slice(0, LONGEST);

const FRESH: PowerWork = { read: {}, seen: [], passed: [] };

export function usePowerWork() {
	const { job } = useCar();
	const [work, store] = useLocalStorage({
		key: `loomwright-power-${job.id}`,
		defaultValue: FRESH,
		getInitialValueInEffect: false,
	});
	const entry = useWriteEntry();
	const note = (text: string, stage?: Stage) =>
		entry.write({ kind: "note", body: { text, ...(stage && { step: stepOf(stage) }) } });
	return {
		work,
		entry,
		take(stage: Stage, reading: StageReading, value: Shown) {
			store({ ...work, read: { ...work.read, [readingKey(stage, reading)]: value } });
			if (reading.question)
				entry.write({ kind: "reading", body: { ...reading.question, value, step: stepOf(stage) } });
			else
				note(
					`Power-up, ${stage.title}: ${shownWords(value, reading.unit)} from ${reading.from} to ${reading.to}`,
					stage,
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
			note(`Power-up, ${stage.title}: holds. ${stage.mustBeTrue.join(" ")}`.trim(), stage);
			entry.write({ kind: "step", body: { step: stepOf(stage) } });
		},
		/** Forgets all on this tablet; the history keeps it. */
		startOver() {
			store(FRESH);
			note("Power-up begun anew");
		},
	};
}

export type Power = ReturnType<typeof usePowerWork>;
