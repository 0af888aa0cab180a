/** The engine's answers for choosing and checking what is done, kept as long as the car is open. */
import type { Supposed, Which } from "@loomwright/engine";
import { useQuery } from "@tanstack/react-query";
import { useCar } from "../app/car.js";

/** Answers depend on the car and the question alone. */
const SURE = { staleTime: Number.POSITIVE_INFINITY, retry: false } as const;

export function useSizes(which: Which) {
	const { job, chooser } = useCar();
	return useQuery({
		queryKey: ["sizes", job.id, which],
		queryFn: () => chooser().call("sizes", which),
		...SURE,
	});
}

/** The cells of a row of the car's tables; null: there is none. */
export function useRow(table: string, row: string) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["row", job.id, table, row],
		queryFn: async () => (await engine.call("row", table, row)) ?? null,
		enabled: row !== "",
		...SURE,
	});
}

/** @param supposed undefined: nothing is asked yet */
export function useWhatIf(which: Which, supposed: Supposed | undefined) {
	const { job, chooser } = useCar();
	return useQuery({
		queryKey: ["what-if", job.id, which, supposed],
		queryFn: ({ signal }) => chooser().callWhileWanted(signal, "whatIf", which, supposed!),
		enabled: supposed !== undefined,
		...SURE,
	});
}

/**
 * The recipe held against another car.
 * @param name what tells the other car apart
 * @param tables of the other car; undefined: none is chosen yet
 */
export function useTransfer(name: string, tables: Readonly<Record<string, string>> | undefined) {
	const { job, chooser } = useCar();
	return useQuery({
		queryKey: ["transfer", job.id, name, tables],
		queryFn: () => chooser().call("transfer", tables!),
		enabled: tables !== undefined,
		...SURE,
	});
}
