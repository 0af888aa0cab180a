/** All entries, the newest first, each to be taken back by a correction. */
import { Button } from "@mantine/core";
import { useState } from "react";
import { useWriteEntry } from "../../server/hooks.js";
import { useQueue } from "../../server/queue/use-queue.js";
import { useSession } from "../../server/session.js";
import type { Entry, Writable } from "../../server/types.js";
import { SavedState } from "../../shared/SavedState.js";
import { Correct } from "./Correct.js";
import { HistoryEntry, useEntryWords } from "./HistoryEntry.js";
import { mayCorrect } from "./may-correct.js";

interface WholeHistoryProps {
	readonly entries: readonly Entry[];
	/** Ids of entries taken back, with the correction. */
	readonly back: ReadonlyMap<string, Entry>;
}

/** How many more are shown at once. */
const MORE = 30;

export function WholeHistory({ entries, back }: WholeHistoryProps) {
	const [shown, setShown] = useState(MORE);
	const who = useSession().data?.who;
	const correcting = useWriteEntry();
	const writeAll = (all: readonly Writable[]) => {
		for (const one of all) correcting.write(one);
	};
	const { waiting } = useQueue();
	const unsent = new Set(
		waiting.flatMap(({ entry: { kind, body } }) => (kind === "correction" ? [body.of] : [])),
	);
	return (
		<div className="stack">
			<p className="soft">
				Entries are never changed or deleted. What is wrong is taken back by a correction: both stay, and what
				was taken back no longer counts.
			</p>
			{correcting.error && <SavedState entry={correcting} />}
			<ul className="history">
				{entries
					.slice(-shown)
					.reverse()
					.map((entry) => (
						<HistoryEntry key={entry.id} entry={entry} entries={entries} by={back.get(entry.id)}>
							{unsent.has(entry.id) ? (
								<span className="tag" data-tone="warn">
									correction waits to be sent
								</span>
							) : (
								who &&
								!back.has(entry.id) &&
								mayCorrect(who, entry) && <TakeBack entry={entry} entries={entries} onWrite={writeAll} />
							)}
						</HistoryEntry>
					))}
			</ul>
			{shown < entries.length && (
				<Button variant="default" onClick={() => setShown(shown + MORE)}>
					Show earlier ones
				</Button>
			)}
		</div>
	);
}

interface TakeBackProps {
	readonly entry: Entry;
	readonly entries: readonly Entry[];
	readonly onWrite: (written: readonly Writable[]) => void;
}

function TakeBack({ entry, entries, onWrite }: TakeBackProps) {
	const { sort, text } = useEntryWords(entry, entries);
	return <Correct entry={entry} words={`${sort} ${text}`} onWrite={onWrite} />;
}
