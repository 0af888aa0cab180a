/** The server's data for the screens of the open job. */
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useCar } from "../app/car.js";
import { newId, readEntries, readPractice, ServerFault, writeEntry } from "./api.js";
import { NOBODY, usePerson } from "./person.js";
import type { NewEntry, Written } from "./types.js";

export function useEntries() {
	const { id } = useCar().job;
	return useQuery({ queryKey: ["entries", id], queryFn: () => readEntries(id) });
}

export function usePractice() {
	const { id } = useCar().job;
	return useQuery({ queryKey: ["practice", id], queryFn: () => readPractice(id) });
}

const ATTEMPTS = 3;

/** Adds to the job's history. The id is given before the first attempt, so that trying again stores it once. */
export function useWriteEntry() {
	const { id: job } = useCar().job;
	const [person] = usePerson();
	const client = useQueryClient();
	const mutation = useMutation({
		mutationFn: (entry: NewEntry) => writeEntry(job, entry),
		retry: (failures, error) => failures < ATTEMPTS && error instanceof ServerFault && error.away,
		onSettled: () => client.invalidateQueries({ queryKey: ["entries", job] }),
		networkMode: "always",
	});
	const write = (written: Written) =>
		mutation.mutate({ ...written, id: newId(), person: person.trim() || NOBODY });
	const again = () => mutation.variables && mutation.mutate(mutation.variables);
	return { write, again, state: mutation.status, error: mutation.error };
}
