/** The reading worth taking next: why, how long, what each outcome would say; and where its value is entered. */
import type { Found, Question } from "@loomwright/engine";
import { Button, UnstyledButton } from "@mantine/core";
import { Cautions } from "../../shared/Cautions.js";
import { ValueEntry } from "../../shared/ValueEntry.js";
import { count, duration } from "../../shared/words.js";
import { LeadsDrawing } from "../meter/LeadsDrawing.js";
import { unitOf } from "../reading/whats.js";
import { Outcomes } from "./Outcomes.js";
import { keyOf } from "./offered.js";
import { type Case, READ_AGAIN } from "./use-case.js";

interface NextReadingProps {
	readonly found: Found;
	readonly shown: Case;
	/** The ranking is being computed anew. */
	readonly busy: boolean;
	/** Picked by the technician; undefined: what is proposed. */
	readonly chosen: Question | undefined;
	readonly onChoose: (question: Question) => void;
}

export function NextReading({ found, shown, busy, chosen, onChoose }: NextReadingProps) {
	const steps = found.next ? [found.next, ...found.others] : found.others;
	const step = steps.find((s) => chosen && keyOf(s.question) === keyOf(chosen)) ?? steps[0];
	if (!step)
		return (
			<section className="card stack">
				<h2>No reading would tell more</h2>
				<p>
					What is left in the list below cannot be told apart by a meter on this car. Inspect, beginning at
					the top.
				</p>
			</section>
		);
	return (
		<section
			className="card next stack"
			aria-label={step.again ? "Reading to take once more" : "Next reading"}
			data-busy={busy || undefined}
		>
			<p className="next-word">
				{step !== found.next
					? "Another reading"
					: step.again
						? "Before anything else"
						: found.settled
							? "Settled: mend what stands on top. To be surer"
							: "Next reading"}{" "}
				<span className="tag">{duration(step.minutes)}</span>
			</p>
			{!found.settled && !step.again && (
				<p className="soft">
					At the least {count(Math.max(1, Math.ceil(found.bits)), "more reading")} to go.
				</p>
			)}
			<h2>{step.text}</h2>
			<p className="cap">{step.because}</p>
			<Cautions cautions={step.cautions} />
			<ValueEntry
				key={keyOf(step.question)}
				unit={unitOf(step.question.what)}
				onValue={(value) =>
					shown.add(...(step.again ? [READ_AGAIN] : []), {
						kind: "reading",
						body: { ...step.question, value },
					})
				}
			/>
			<Outcomes outcomes={step.outcomes} />
			{!step.again && (
				<Button variant="default" disabled={busy} onClick={() => shown.refuse(step.question)}>
					Propose another reading
				</Button>
			)}
			<LeadsDrawing key={`drawing ${keyOf(step.question)}`} question={step.question} which={shown.which} />
			{steps.length > 1 && (
				<details className="fold">
					<summary>Other readings worth taking</summary>
					<ul className="row-list">
						{steps
							.filter((other) => other !== step)
							.map((other) => (
								<li key={keyOf(other.question)}>
									<UnstyledButton className="row" onClick={() => onChoose(other.question)}>
										<span className="row-main">
											<strong>{other.text}</strong>
											<span className="soft">{other.because}</span>
										</span>
										<span className="row-end">{duration(other.minutes)}</span>
									</UnstyledButton>
								</li>
							))}
					</ul>
				</details>
			)}
		</section>
	);
}
