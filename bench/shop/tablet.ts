/** One simulated tablet: writes, is away at times, loses answers, sends again, and listens. */
import { randomBytes } from "node:crypto";

export interface Shop {
	readonly address: string;
	/** Of every request that was answered, in milliseconds. */
	readonly took: number[];
}

export interface Entry {
	readonly id: string;
	readonly kind: "sign-off";
	readonly body: { readonly step: string };
	readonly device: string;
	readonly counter: number;
	readonly seen: number;
}

/** Chance at each step that the tablet goes out of reach, and for how many steps. */
const AWAY = 0.05;
const AWAY_STEPS = 6;
/** Chance that the answer to a sending is lost. */
const LOST = 0.1;
/** Asks for news at most so often, in milliseconds. */
const LISTEN_MS = 1000;

export class Tablet {
	readonly written: string[] = [];
	#queue: Entry[] = [];
	#away = 0;
	#seen = 0;
	#asking = false;
	#lastAsked = 0;
	readonly #stop = new AbortController();
	readonly #device = randomBytes(8).toString("hex");

	constructor(
		readonly shop: Shop,
		readonly number: number,
		readonly job: string,
		readonly headers: Readonly<Record<string, string>>,
		readonly random: () => number,
	) {}

	/** Listens for news until `stop`. */
	async listen(): Promise<void> {
		try {
			const headers = { ...this.headers, accept: "text/event-stream" };
			const response = await fetch(`${this.shop.address}/api/v1/live`, {
				headers,
				signal: this.#stop.signal,
			});
			if (!response.ok || !response.body) throw new Error(`live: status ${response.status}`);
			const news = `"job":"${this.job}"`;
			for await (const piece of response.body.pipeThrough(new TextDecoderStream()))
				if (piece.includes(news)) void this.#hear();
		} catch (error) {
			if (!this.#stop.signal.aborted) throw error;
		}
	}

	stop(): void {
		this.#stop.abort();
	}

	/** Half a minute of work: one sign-off, then what waits is sent. */
	async step(): Promise<void> {
		const counter = this.written.length + 1;
		const id = `tablet-${this.number}-${counter}`;
		const body = { step: `recipe/${1 + (counter % 7)}` };
		this.#queue.push({ id, kind: "sign-off", body, device: this.#device, counter, seen: this.#seen });
		this.written.push(id);
		if (this.#away > 0) this.#away -= 1;
		else if (this.random() < AWAY) this.#away = AWAY_STEPS;
		else await this.send();
	}

	/** Sends the queue; what is not answered for stays in it. */
	async send(sure = false): Promise<void> {
		if (this.#queue.length === 0) return;
		const lost = !sure && this.random() < LOST;
		const signal = lost ? AbortSignal.timeout(1 + Math.floor(this.random() * 15)) : undefined;
		const entries = [...this.#queue];
		try {
			const { results } = (await this.#ask("queue", { entries }, signal)) as {
				results: { id: string; outcome: string; error: string }[];
			};
			const refused = results.find(({ outcome }) => outcome === "refused");
			if (refused) throw new Error(`${refused.id} was refused: ${refused.error}`);
			const there = new Set(results.map(({ id }) => id));
			this.#queue = this.#queue.filter(({ id }) => !there.has(id));
		} catch (error) {
			if (!lost) throw error;
		}
	}

	async #hear(): Promise<void> {
		if (this.#asking || this.#away > 0 || performance.now() - this.#lastAsked < LISTEN_MS) return;
		this.#asking = true;
		this.#lastAsked = performance.now();
		try {
			const { entries } = (await this.#ask(`entries?after=${this.#seen}`)) as {
				entries: { place: number }[];
			};
			this.#seen = entries.at(-1)?.place ?? this.#seen;
		} finally {
			this.#asking = false;
		}
	}

	async #ask(path: string, body?: unknown, signal?: AbortSignal): Promise<unknown> {
		const began = performance.now();
		const response = await fetch(`${this.shop.address}/api/v1/jobs/${this.job}/${path}`, {
			headers: { ...this.headers, ...(body === undefined ? {} : { "content-type": "application/json" }) },
			...(body === undefined ? {} : { method: "POST", body: JSON.stringify(body) }),
			...(signal ? { signal } : {}),
		});
		const answer: unknown = await response.json();
		this.shop.took.push(performance.now() - began);
		if (!response.ok) throw new Error(`${path}: ${response.status} ${JSON.stringify(answer)}`);
		return answer;
	}
}
