/** What the shop knows besides the car, for finding: its own repairs, and who did which step of this car's recipe. */
import type { ShopRecord } from "@loomwright/engine";
import { useJobState, useRepairs } from "./hooks.js";
import { useQueue } from "./queue/use-queue.js";
import type { JobState, ShopRepairs, Waiting } from "./types.js";

export interface Known {
	readonly record: ShopRecord;
	/** By the step's number. */
	readonly doneBy: Readonly<Record<string, string>>;
}

const NONE: ShopRepairs = { cars: 0, work: [], repairs: [] };

/** As the server has it, with what still waits on this tablet; nothing while neither is known. */
export function useKnown(): Known {
	const repairs = useRepairs().data ?? NONE;
	const steps = useJobState().data?.steps ?? [];
	const { waiting } = useQueue();
	return { record: recordOf(withWaiting(repairs, waiting)), doneBy: doneBy(steps) };
}

/** The repairs as they will be once the server has what waits here; refused entries do not count. */
export function useRepairsHere(): ShopRepairs {
	return withWaiting(useRepairs().data ?? NONE, useQueue().waiting);
}

export function withWaiting(known: ShopRepairs, waiting: readonly Waiting[]): ShopRepairs {
	const sent = waiting.filter(({ refused }) => refused === "");
	const back = new Map(
		sent.flatMap(({ entry }) => (entry.kind === "correction" ? [[entry.body.of, entry.id] as const] : [])),
	);
	const there = new Set(known.repairs.map(({ entry }) => entry));
	const own = sent.flatMap(({ job, entry }) => {
		if (entry.kind !== "repair" || there.has(entry.id)) return [];
		const { id, person, time, body } = entry;
		return [{ ...body, entry: id, job, person, time, takenBack: "" }];
	});
	const repairs = [...known.repairs, ...own].map((one) => ({
		...one,
		takenBack: one.takenBack || (back.get(one.entry) ?? ""),
	}));
	const counted = new Set(known.repairs.filter(counts).map(({ job }) => job));
	const more = new Set(repairs.filter(counts).map(({ job }) => job));
	const cars = known.cars + [...more].filter((job) => !counted.has(job)).length;
	return { ...known, repairs, cars };
}

const counts = ({ takenBack }: ShopRepairs["repairs"][number]): boolean => takenBack === "";

const recordOf = ({ cars, work, repairs }: ShopRepairs): ShopRecord => ({
	cars,
	work,
	repairs: repairs
		.filter(counts)
		.map(({ kind, steps, worked }) => ({ kind, touched: steps.length > 0, person: worked })),
});

function doneBy(steps: JobState["steps"]): Known["doneBy"] {
	return Object.fromEntries(
		steps.flatMap(({ step, done }) => {
			const number = /^recipe\/(.*)$/.exec(step)?.[1];
			const last = done.at(-1);
			return number === undefined || !last ? [] : [[number, last.person] as const];
		}),
	);
}
