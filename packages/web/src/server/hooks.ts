/** The server's data for the screens of the open job. */
import { useQuery } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { useCar } from "../app/car.js";
import { readPractice, readRepairs, readState } from "./api.js";
import { fetchHistory } from "./history/fetch.js";
import type { History } from "./history/grow.js";
import { keepPhotos, photoOf } from "./history/photos.js";
import { write as keepAndSend } from "./queue/queue.js";
import { useQueue } from "./queue/use-queue.js";
import { useWriter } from "./session.js";
import { useFlush } from "./sync.js";
import type { Writable } from "./types.js";

/** The job's history; each time only what is new is fetched. */
export function useHistory<T = History>(select?: (history: History) => T) {
	const { id } = useCar().job;
	return useQuery({
		queryKey: ["entries", id],
		queryFn: async ({ client, queryKey }) => {
			const history = await fetchHistory(id, client.getQueryData<History>(queryKey));
			void keepPhotos(id, history.entries);
			return history;
		},
		...(select ? { select } : {}),
	});
}

const entriesOf = ({ entries }: History) => entries;

export const useEntries = () => useHistory(entriesOf);

/** A photo of the job as an address for the page; undefined until it is there. */
export function usePhoto(photo: string, stored: string) {
	const { id } = useCar().job;
	const { data, error } = useQuery({
		queryKey: ["photo", id, photo],
		queryFn: () => photoOf(id, photo, stored),
		staleTime: Number.POSITIVE_INFINITY,
	});
	const [address, setAddress] = useState<string>();
	useEffect(() => {
		if (!data) return;
		const made = URL.createObjectURL(data);
		setAddress(made);
		return () => URL.revokeObjectURL(made);
	}, [data]);
	return { address, error };
}

/** How the job stands: steps, holds, clashes. */
export function useJobState() {
	const { id } = useCar().job;
	return useQuery({ queryKey: ["state", id], queryFn: () => readState(id) });
}

/** The shop's own repairs; not asked again for every entry that others make. */
export const useRepairs = () => useQuery({ queryKey: ["repairs"], queryFn: readRepairs });

export function usePractice() {
	const { id } = useCar().job;
	return useQuery({ queryKey: ["practice", id], queryFn: () => readPractice(id) });
}

type WriteState = "idle" | "pending" | "success" | "error";

/** Adds to the job's history. What was written is first kept on this tablet, then sent until the server has it. */
export function useWriteEntry() {
	const { id: job } = useCar().job;
	const by = useWriter();
	const entries = useEntries().data;
	const send = useFlush();
	const queue = useQueue();
	const [last, setLast] = useState("");
	const [failed, setFailed] = useState<Error>();
	const write = async (written: Writable, picture?: Blob) => {
		// What others enter from here on is not known to whoever writes this now.
		const seen = entries?.at(-1)?.place ?? 0;
		try {
			setFailed(undefined);
			setLast(await keepAndSend(job, written, by, seen, picture));
			await send();
		} catch (error) {
			setFailed(error as Error);
		}
	};
	const own = queue.waiting.find(({ entry }) => entry.id === last);
	const refused = own?.refused ? new Error(own.refused) : undefined;
	const error = failed ?? refused ?? (own && !queue.sending ? queue.fault : undefined);
	const state: WriteState = error ? "error" : own ? "pending" : last === "" ? "idle" : "success";
	return {
		/** @param picture of a photo: the picture itself */
		write: (written: Writable, picture?: Blob) => void write(written, picture),
		again: () => void send(),
		state,
		error,
	};
}
