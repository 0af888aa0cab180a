/** The newest entries of the job's history, and the way to all of them. */
import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import { takenBack } from "../../server/history/taken-back.js";
import { useHistory } from "../../server/hooks.js";
import { HistoryEntry } from "./HistoryEntry.js";
import { WholeHistory } from "./WholeHistory.js";

const SHOWN = 5;

export function History() {
	const history = useHistory();
	const [open, setOpen] = useState(false);
	if (history.error && !history.data)
		return <p className="soft">The history cannot be fetched: {history.error.message}.</p>;
	const { entries = [], fault = null } = history.data ?? {};
	if (entries.length === 0) return null;
	const back = takenBack(entries);
	return (
		<section className="stack">
			<h2>Newest in the history</h2>
			{fault && (
				<p className="notice" data-tone="stop" role="alert">
					The history is not as it was written: {fault}. Tell the owner; a backup shows what it was
					(docs/shop.md).
				</p>
			)}
			<ul className="history">
				{entries
					.slice(-SHOWN)
					.reverse()
					.map((entry) => (
						<HistoryEntry key={entry.id} entry={entry} entries={entries} by={back.get(entry.id)} />
					))}
			</ul>
			<Button variant="default" onClick={() => setOpen(true)}>
				Whole history
			</Button>
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title="History"
				size="xl"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<WholeHistory entries={entries} back={back} />
			</Modal>
		</section>
	);
}
