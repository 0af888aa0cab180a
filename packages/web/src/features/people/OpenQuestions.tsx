/** On the start screen: holds that are on, and entries on one step whose writers did not know of each other's. */
import { useJobState } from "../../server/hooks.js";

export function OpenQuestions() {
	const state = useJobState().data;
	const clashes = state?.clashes.filter(({ settled }) => settled === "") ?? [];
	const holds = state?.holds.filter(({ lifted }) => lifted === "") ?? [];
	if (clashes.length + holds.length === 0) return null;
	return (
		<section className="notice stack" data-tone="warn" aria-label="Open questions">
			{holds.map(({ entry, step, text, person }) => (
				<p key={entry}>
					<strong>{step === "" ? "The job" : step} is on hold:</strong> {text} ({person})
				</p>
			))}
			{clashes.map(({ step, entries, people }) => (
				<p key={entries.join()}>
					<strong>{step}:</strong> {people.join(" and ")} both entered it without knowing of the other. Both
					entries stay; whoever looks at the car and signs settles it.
				</p>
			))}
		</section>
	);
}
