import type { News } from "../store/driver/news.js";

interface Listener {
	/** Of the newest entry; the tablet asks for those after the last it has. */
	readonly heard: (news: News) => void;
	/** Nothing more will come this way: the server stops, or news may have been lost and the tablet must ask anew. */
	readonly ended: () => void;
}

/** Tells every tablet that listens what was stored just now, through this server or another on the same database. */
export class Live {
	readonly #listeners = new Set<Listener>();
	/** The newest place told of each job: the same news may come by several ways. */
	readonly #told = new Map<string, number>();

	/** Returns how to stop listening. */
	listen(listener: Listener): () => void {
		this.#listeners.add(listener);
		return () => void this.#listeners.delete(listener);
	}

	tell(news: News): void {
		if (news.place <= (this.#told.get(news.job) ?? 0)) return;
		this.#told.set(news.job, news.place);
		for (const listener of this.#listeners) listener.heard(news);
	}

	/** Ends what is listened to. Tablets listen anew, and fetch what they have not. */
	close(): void {
		this.#told.clear();
		for (const listener of this.#listeners) listener.ended();
	}
}
