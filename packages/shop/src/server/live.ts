/** Tells every tablet that listens what was stored just now. */
export interface News {
	readonly job: string;
	/** Place of the newest entry; the tablet asks for those after the last it has. */
	readonly place: number;
}

interface Listener {
	readonly heard: (news: News) => void;
	/** The server stops: nothing more will come. */
	readonly ended: () => void;
}

export class Live {
	readonly #listeners = new Set<Listener>();

	/** Returns how to stop listening. */
	listen(listener: Listener): () => void {
		this.#listeners.add(listener);
		return () => void this.#listeners.delete(listener);
	}

	tell(news: News): void {
		for (const listener of this.#listeners) listener.heard(news);
	}

	close(): void {
		for (const listener of this.#listeners) listener.ended();
	}
}
