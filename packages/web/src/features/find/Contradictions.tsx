/** What does not fit the leading fault; a reading among it can be taken once more on the spot. */
import type { Found } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { ValueEntry } from "../../shared/ValueEntry.js";
import { unitOf } from "../reading/whats.js";
import { keyOf } from "./offered.js";
import { type Case, READ_AGAIN } from "./use-case.js";

type Question = Extract<Found["repeat"][number]["entry"], { kind: "reading" }>["question"];

export function Contradictions({ found, shown }: { found: Found; shown: Case }) {
	if (found.contradictions.length === 0) return null;
	const again = new Map(
		found.repeat.flatMap(({ text, entry }) =>
			// What stands below as the next reading is not asked for twice.
			entry.kind === "reading" && !(found.next?.again && keyOf(found.next.question) === keyOf(entry.question))
				? [[text, entry.question] as const]
				: [],
		),
	);
	return (
		<section className="notice stack" data-tone="warn" aria-label="What does not fit">
			<h2>This does not fit together</h2>
			<ul>
				{found.contradictions.map((line) => (
					<li key={line} className="stack">
						<span>{line}</span>
						{again.has(line) && <Again question={again.get(line)!} shown={shown} />}
					</li>
				))}
			</ul>
		</section>
	);
}

function Again({ question, shown }: { question: Question; shown: Case }) {
	const [open, setOpen] = useState(false);
	if (!open)
		return (
			<Button variant="default" onClick={() => setOpen(true)}>
				Take this reading once more
			</Button>
		);
	const { what, from, to, when } = question;
	return (
		<ValueEntry
			unit={unitOf(what)}
			onValue={(value) => shown.add(READ_AGAIN, { kind: "reading", body: { what, from, to, when, value } })}
		/>
	);
}
