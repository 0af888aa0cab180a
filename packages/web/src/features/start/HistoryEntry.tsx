/** One entry of the history in words, marked where it was taken back. */
import type { ReactNode } from "react";
import { useCar } from "../../app/car.js";
import { usePhoto } from "../../server/hooks.js";
import type { Entry } from "../../server/types.js";
import type { ActWords } from "../find/act-words.js";
import { entryWords } from "./entry-words.js";

interface HistoryEntryProps {
	readonly entry: Entry;
	/** The whole history: a correction is told by what it takes back. */
	readonly entries: readonly Entry[];
	/** The correction that takes it back. */
	readonly by: Entry | undefined;
	readonly children?: ReactNode;
}

export function HistoryEntry({ entry, entries, by, children }: HistoryEntryProps) {
	const words = useEntryWords(entry, entries);
	return (
		<li data-corrected={by !== undefined || undefined}>
			<div>
				<strong>{words.sort}</strong> <span className="history-text">{words.text}</span>
				{entry.kind === "photo" && <Photo entry={entry} alt={`${words.sort} ${words.text}`} />}
				<div className="soft">{byWhom(entry)}</div>
				{by && (
					<p className="history-correction">
						<span className="tag" data-tone="warn">
							taken back
						</span>{" "}
						{byWhom(by)}: {(by.body as { text: string }).text}
					</p>
				)}
			</div>
			{children}
		</li>
	);
}

/** In words; a correction with what it takes back. */
export function useEntryWords(entry: Entry, entries: readonly Entry[]): ActWords {
	const loom = useCar().car.converted;
	const words = entryWords(entry, loom);
	const { of } = entry.body as { of?: string };
	const target = entry.kind === "correction" ? entries.find(({ id }) => id === of) : undefined;
	if (!target) return words;
	const { sort, text } = entryWords(target, loom);
	return { sort: words.sort, text: `${[sort, text].join(" ").trim()}. Why: ${words.text}` };
}

const byWhom = ({ person, time }: Entry): string =>
	`${person || "the server"}, ${new Date(time).toLocaleString()}`;

function Photo({ entry: { body, stored }, alt }: { entry: Entry; alt: string }) {
	const { address, error } = usePhoto((body as { photo: string }).photo, stored);
	if (error) return <p className="soft">The photo is not on this tablet: {error.message}.</p>;
	return address ? <img className="history-photo" src={address} alt={alt} /> : null;
}
