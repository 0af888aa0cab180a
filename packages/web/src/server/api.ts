/** Asks the shop's server. Every failure becomes a ServerFault that says what is wrong and what to do. */
import type { TableError } from "@loomwright/engine";
import type { RecipeState } from "./choosing.js";
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
	ShopRepairs,
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
		/** Of tables that were sent: each by file, row and column. */
		readonly errors: readonly TableError[] = [],
	) {
		super(message);
	}
}

const BASE = "/api/v1";

export const at = (job: string) => `${BASE}/jobs/${encodeURIComponent(job)}`;

export const readJobs = async (): Promise<readonly JobSummary[]> =>
	(await ask<{ jobs: JobSummary[] }>(`${BASE}/jobs`)).jobs;

export const readJob = (job: string): Promise<Job & RecipeState> => ask(at(job));

export const readPractice = async (job: string): Promise<readonly Practice[]> =>
	(await ask<{ practice: Practice[] }>(`${at(job)}/practice`)).practice;

export interface Entries {
	readonly entries: readonly Entry[];
	/** Hash of the entry at the place asked after; empty: there is none. */
	readonly link: string;
	/** Where the history is not as it was written; null: it stands. */
	readonly fault: string | null;
}

/** @param after only those after this place */
export const readEntries = (job: string, after: number): Promise<Entries> =>
	ask(`${at(job)}/entries?after=${after}`);

export const readState = (job: string): Promise<JobState> => ask(`${at(job)}/state`);

export const readRepairs = (): Promise<ShopRepairs> => ask(`${BASE}/repairs`);

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

export async function readPhoto(job: string, photo: string): Promise<Blob> {
	const response = await reach(`${at(job)}/photos/${photo}`);
	if (response.ok) return response.blob();
	throw refusal(response, await response.json().catch(() => ({})));
}

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

export function sent(method: string, body?: unknown): RequestInit {
	const headers = { "x-loomwright-csrf": csrf };
	if (body === undefined) return { method, headers };
	return { method, headers: { ...headers, "content-type": "application/json" }, body: JSON.stringify(body) };
}

export async function ask<T>(url: string, init?: RequestInit): Promise<T> {
	const response = await reach(url, init);
	const answer = await response.json().catch(() => undefined);
	if (answer === undefined) throw noSense(response);
	if (!response.ok) throw refusal(response, answer);
	return answer as T;
}

async function reach(url: string, init?: RequestInit): Promise<Response> {
	try {
		return await fetch(url, init);
	} catch {
		throw away("the shop's server does not answer");
	}
}

function refusal({ status }: Response, answer: unknown): ServerFault {
	const { error, toDo, errors } = answer as { error?: string; toDo?: string; errors?: TableError[] };
	return new ServerFault(error ?? `status ${status}`, toDo ?? "", status >= 500, status, errors ?? []);
}

const noSense = ({ status }: Response) => away(`the shop's server gave no sense (status ${status})`);

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
