/** Asks the shop's server. Every failure becomes a ServerFault that says what is wrong and what to do. */
import type { Entry, Job, JobSummary, NewEntry, Practice } from "./types.js";

export class ServerFault extends Error {
	override readonly name = "ServerFault";

	constructor(
		message: string,
		readonly toDo: string,
		/** True where no answer came at all: worth trying again. */
		readonly away: boolean,
	) {
		super(message);
	}
}

const BASE = "/api/v1";

const at = (job: string) => `${BASE}/jobs/${encodeURIComponent(job)}`;

export const readJobs = async (): Promise<readonly JobSummary[]> =>
	(await ask<{ jobs: JobSummary[] }>(`${BASE}/jobs`)).jobs;

export const readJob = (job: string): Promise<Job> => ask(at(job));

export const readPractice = async (job: string): Promise<readonly Practice[]> =>
	(await ask<{ practice: Practice[] }>(`${at(job)}/practice`)).practice;

export const readEntries = async (job: string): Promise<readonly Entry[]> =>
	(await ask<{ entries: Entry[] }>(`${at(job)}/entries`)).entries;

/** Sending an entry again with the same id stores it once. */
export const writeEntry = (job: string, entry: NewEntry): Promise<Entry> =>
	ask(`${at(job)}/entries`, {
		method: "POST",
		headers: { "content-type": "application/json" },
		body: JSON.stringify(entry),
	});

async function ask<T>(url: string, init?: RequestInit): Promise<T> {
	let response: Response;
	try {
		response = await fetch(url, init);
	} catch {
		throw away("the shop's server does not answer");
	}
	const answer = await response.json().catch(() => undefined);
	if (response.ok && answer !== undefined) return answer as T;
	if (answer === undefined) throw away(`the shop's server gave no sense (status ${response.status})`);
	const { error, toDo } = answer as { error?: string; toDo?: string };
	throw new ServerFault(error ?? `status ${response.status}`, toDo ?? "", response.status >= 500);
}

const away = (what: string) =>
	new ServerFault(
		what,
		"See that it runs and that this tablet is in the shop's network, then try again.",
		true,
	);

/** An id no other tablet picks; works also where the page came over plain http. */
export function newId(): string {
	const bytes = crypto.getRandomValues(new Uint8Array(15));
	return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
