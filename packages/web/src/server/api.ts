/** Asks the shop's server. Every failure becomes a ServerFault that says what is wrong and what to do. */
import type {
	Entry,
	Job,
	JobState,
	JobSummary,
	NewEntry,
	Person,
	Practice,
	QueueResult,
	Session,
} from "./types.js";

export class ServerFault extends Error {
	override readonly name = "ServerFault";

	constructor(
		message: string,
		readonly toDo: string,
		/** True where no answer came at all: worth trying again. */
		readonly away: boolean,
		/** HTTP status; 0: no answer. */
		readonly status = 0,
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

export const readState = (job: string): Promise<JobState> => ask(`${at(job)}/state`);

/** Sending entries again with the same ids stores them once. */
export const sendQueue = async (job: string, entries: readonly NewEntry[]): Promise<readonly QueueResult[]> =>
	(await ask<{ results: QueueResult[] }>(`${at(job)}/queue`, sent("POST", { entries }))).results;

/** Sends a picture; the same one again has the same id. */
export async function sendPhoto(job: string, picture: Blob): Promise<string> {
	const body = new FormData();
	body.append("file", picture, "photo");
	const { method, headers } = sent("POST");
	return (await ask<{ photo: string }>(`${at(job)}/photos`, { method: method!, headers: headers!, body }))
		.photo;
}

export const photoAddress = (job: string, photo: string): string => `${at(job)}/photos/${photo}`;

export const readSession = (): Promise<Session> => session(ask(`${BASE}/session`));

export const signIn = (given: { person: string; pin: string }): Promise<Session> =>
	session(ask(`${BASE}/session`, sent("POST", given)));

export const openGuestLink = (token: string): Promise<Session> =>
	session(ask(`${BASE}/session/guest`, sent("POST", { token })));

export const signOut = (): Promise<Session> => session(ask(`${BASE}/session`, sent("DELETE")));

export const setUpOwner = (given: { name: string; pin: string }): Promise<Session> =>
	session(ask(`${BASE}/setup`, sent("POST", given)));

export const readPeople = async (): Promise<readonly Person[]> =>
	(await ask<{ people: Person[] }>(`${BASE}/people`)).people;

export const addPerson = (given: { name: string; role: Person["role"]; pin: string }): Promise<Person> =>
	ask(`${BASE}/people`, sent("POST", given));

/** @param ability null: what follows from role and practice */
export const setAbility = (given: {
	person: string;
	sort: string;
	ability: string | null;
}): Promise<Person> => {
	const { person, ...body } = given;
	return ask(`${BASE}/people/${encodeURIComponent(person)}/abilities`, sent("PUT", body));
};

/** Told with the session; goes with every request that changes something. */
let csrf = "";

async function session(asked: Promise<Session>): Promise<Session> {
	const answer = await asked;
	csrf = answer.csrf;
	return answer;
}

function sent(method: string, body?: unknown): RequestInit {
	const headers = { "x-loomwright-csrf": csrf };
	if (body === undefined) return { method, headers };
	return { method, headers: { ...headers, "content-type": "application/json" }, body: JSON.stringify(body) };
}

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
	throw new ServerFault(
		error ?? `status ${response.status}`,
		toDo ?? "",
		response.status >= 500,
		response.status,
	);
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
