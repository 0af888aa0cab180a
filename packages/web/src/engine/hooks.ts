/** The engine's answers for the screens of the open job, kept as long as the car is open. */
import type { Evidence, Question, Which } from "@loomwright/engine";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useCar } from "../app/car.js";
import { useKnown } from "../server/known.js";
import type { SheetRequest } from "./protocol.js";

/** Answers depend on the car and the question alone, so they never go stale and are not asked twice. */
const SURE = { staleTime: Number.POSITIVE_INFINITY, retry: false } as const;

export function useChanges() {
	const { job, engine } = useCar();
	return useQuery({ queryKey: ["changes", job.id], queryFn: () => engine.call("changes"), ...SURE });
}

export function useFindings(which: Which) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["findings", job.id, which],
		queryFn: () => engine.call("findings", which),
		...SURE,
	});
}

/** @param question undefined: nothing is asked yet */
export function useReading(which: Which, question: Question | undefined) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["reading", job.id, which, question],
		queryFn: () => engine.call("reading", which, question!),
		enabled: question !== undefined,
		...SURE,
	});
}

export function useWireState(which: Which, wire: string, when: string) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["wire", job.id, which, wire, when],
		queryFn: () => engine.call("wire", which, wire, when),
		enabled: when !== "",
		...SURE,
	});
}

export function useWayBetween(which: Which, from: string, to: string) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["between", job.id, which, from, to],
		queryFn: () => engine.call("between", which, from, to),
		enabled: from !== "" && to !== "",
		placeholderData: keepPreviousData,
		...SURE,
	});
}

export function useSheet(request: SheetRequest) {
	const { job, engine } = useCar();
	return useQuery({
		queryKey: ["sheet", job.id, request],
		queryFn: () => engine.call("subcircuit", request),
		placeholderData: keepPreviousData,
		...SURE,
	});
}

/**
 * @param evidence undefined: nothing was seen yet
 * @param refused readings that are not to be proposed
 */
export function useFound(evidence: Evidence | undefined, refused: readonly Question[]) {
	const { job, finder } = useCar();
	const known = useKnown();
	return useQuery({
		queryKey: ["found", job.id, evidence, refused, known],
		queryFn: ({ signal }) => finder().callWhileWanted(signal, "find", evidence!, refused, known),
		enabled: evidence !== undefined,
		placeholderData: keepPreviousData,
		...SURE,
	});
}

export function useExplanation(evidence: Evidence, fault: string) {
	const { job, finder } = useCar();
	const known = useKnown();
	return useQuery({
		queryKey: ["explain", job.id, evidence, fault, known],
		queryFn: ({ signal }) => finder().callWhileWanted(signal, "explain", evidence, fault, known),
		...SURE,
	});
}

/** What the shop's own repairs make of the chances of this car's faults. */
export function useRates(which: Which) {
	const { job, finder } = useCar();
	const known = useKnown();
	return useQuery({
		queryKey: ["rates", job.id, which, known],
		queryFn: ({ signal }) => finder().callWhileWanted(signal, "rates", which, known),
		placeholderData: keepPreviousData,
		...SURE,
	});
}

/** The readings before power; computed once for a car and kept on this tablet. */
export function useProveSheet() {
	const { job, prover, kept } = useCar();
	return useQuery({
		queryKey: ["prove", job.id],
		queryFn: async () => {
			const known = await kept.read();
			if (known) return known;
			const sheet = await prover().call("prove");
			await kept.write(sheet);
			return sheet;
		},
		...SURE,
	});
}

export function usePowerUp() {
	const { job, prover } = useCar();
	return useQuery({ queryKey: ["power", job.id], queryFn: () => prover().call("powerUp"), ...SURE });
}
