/** What the meter really showed: told against the band, and written into the job's history. */
import type { Question, Reading } from "@loomwright/engine";
import { useState } from "react";
import { useWriteEntry } from "../../server/hooks.js";
import { useSession } from "../../server/session.js";
import { SavedState } from "../../shared/SavedState.js";
import { ValueEntry } from "../../shared/ValueEntry.js";
import { amount } from "../../shared/words.js";
import { verdict } from "./verdict.js";

export function TakeDown({ question, reading }: { question: Question; reading: Reading }) {
	const [shown, setShown] = useState<number | "open">();
	const entry = useWriteEntry();
	const guest = useSession().data?.who.role === "guest";
	if (guest) return null;
	return (
		<section className="stack">
			<h3>What does the meter show?</h3>
			<ValueEntry
				unit={reading.unit}
				onValue={(value) => {
					setShown(value);
					entry.write({ kind: "reading", body: { ...question, value } });
				}}
			/>
			{shown !== undefined && (
				<p className="notice stack" data-tone={verdict(reading, shown).inside ? "calm" : "stop"}>
					<strong>{shown === "open" ? "open" : amount(shown, reading.unit)}</strong>:{" "}
					{verdict(reading, shown).words}
				</p>
			)}
			<SavedState entry={entry} />
		</section>
	);
}
