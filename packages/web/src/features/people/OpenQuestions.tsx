/** On the start screen: holds that are on, and entries on one step whose writers did not know of each other's. */
import { useJobState, useWriteEntry } from "../../server/hooks.js";
import { useSession } from "../../server/session.js";
import { SavedState } from "../../shared/SavedState.js";
import { AskWhy } from "./AskWhy.js";

const MAY_LIFT: ReadonlySet<string> = new Set(["bench", "owner", "technician"]);

export function OpenQuestions() {
	const state = useJobState().data;
	const role = useSession().data?.who.role ?? "nobody";
	const lifting = useWriteEntry();
	const clashes = state?.clashes.filter(({ settled }) => settled === "") ?? [];
	const holds = state?.holds.filter(({ lifted }) => lifted === "") ?? [];
	if (clashes.length + holds.length === 0) return null;
	return (
		<section className="notice stack" data-tone="warn" aria-label="Open questions">
			{holds.map(({ entry, step, text, person }) => (
				<div key={entry} className="stack">
					<p>
						<strong>{step === "" ? "The job" : step} is on hold:</strong> {text} ({person})
					</p>
					{MAY_LIFT.has(role) && (
						<AskWhy
							button="Lift the hold"
							label={`Lift the hold on ${step === "" ? "the job" : step}`}
							question="What has changed?"
							onReason={(why) => lifting.write({ kind: "lift", body: { hold: entry, text: why } })}
						/>
					)}
				</div>
			))}
			{clashes.map(({ step, entries, people }) => (
				<p key={entries.join()}>
					<strong>{step}:</strong> {people.join(" and ")} both entered it without knowing of the other. Both
					entries stay; whoever looks at the car and signs settles it.
				</p>
			))}
			{lifting.error && <SavedState entry={lifting} />}
		</section>
	);
}
