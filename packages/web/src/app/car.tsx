/** The open car, for every screen: fetched from the server, opened by the engine in its worker. */
import { useQuery } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect } from "react";
import { type OpenEngine, openEngine } from "../engine/start.js";
import { readJob, readJobs } from "../server/api.js";
import type { RecipeState } from "../server/choosing.js";
import type { Job, JobSummary } from "../server/types.js";
import { FaultNotice } from "../shared/FaultNotice.js";
import { Working } from "../shared/Working.js";
import { NoSuchJob } from "./NoSuchJob.js";

export interface CarOnScreen extends OpenEngine, RecipeState {
	readonly job: JobSummary;
	readonly jobs: readonly JobSummary[];
	/** The car's tables, file name to text. */
	readonly tables: Job["tables"];
}

const CarContext = createContext<CarOnScreen | undefined>(undefined);

export const useOptionalCar = (): CarOnScreen | undefined => useContext(CarContext);

export function useCar(): CarOnScreen {
	const found = useOptionalCar();
	if (!found) throw new Error("outside of an open car");
	return found;
}

const FOR_GOOD = { staleTime: Number.POSITIVE_INFINITY, gcTime: 0 };

interface CarProviderProps {
	/** Id of the job; empty: the first one. */
	readonly id: string;
	/** Frame for what is said while no car is open. */
	readonly bare: (message: ReactNode) => ReactNode;
	readonly children: ReactNode;
}

export function CarProvider({ id, bare, children }: CarProviderProps) {
	const jobs = useQuery({ queryKey: ["jobs"], queryFn: readJobs });
	const wanted = id || (jobs.data?.[0]?.id ?? "");
	const there = jobs.data?.some((job) => job.id === wanted) ?? false;
	const job = useQuery({
		queryKey: ["job", wanted],
		queryFn: () => readJob(wanted),
		enabled: there,
		...FOR_GOOD,
	});
	const tables = job.data?.tables;
	const open = useQuery({
		queryKey: ["car", wanted],
		queryFn: () => openEngine(tables!),
		enabled: tables !== undefined,
		retry: false,
		...FOR_GOOD,
	});
	const { data: engines } = open;
	useEffect(() => () => engines?.close(), [engines]);
	const failed = [jobs, job, open].find((query) => query.error !== null);
	if (failed?.error)
		return bare(
			<FaultNotice title="The car cannot be opened" error={failed.error} again={() => failed.refetch()} />,
		);
	if (jobs.data?.length === 0)
		return bare(<FaultNotice title="No job yet" error={new Error(NO_JOB)} again={() => jobs.refetch()} />);
	if (jobs.data && !there) return bare(<NoSuchJob id={wanted} jobs={jobs.data} />);
	if (!job.data || !engines)
		return bare(
			<Working what={tables ? "Assembling the car's wiring" : "Fetching the job from the shop's server"} />,
		);
	const { tables: own, recipe, replaced, ...summary } = job.data;
	const value = { job: summary, jobs: jobs.data ?? [summary], tables: own, recipe, replaced, ...engines };
	return <CarContext value={value}>{children}</CarContext>;
}

const NO_JOB = "This shop's server has no job. Start it with the folder of a car's tables.";
