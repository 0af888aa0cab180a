/** The computed reading: value, band, how to connect the meter, what the band comes from; or why there is none. */
import type { Question, Reading } from "@loomwright/engine";
import { EngineFault } from "../../engine/engine-fault.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Gauge } from "../../shared/Gauge.js";
import { Working } from "../../shared/Working.js";
import { amount } from "../../shared/words.js";
import { Grounds } from "./Grounds.js";
import { TakeDown } from "./TakeDown.js";

interface AnswerProps {
	readonly question: Question | undefined;
	readonly reading: Reading | undefined;
	readonly error: Error | null;
}

export function Answer({ question, reading, error }: AnswerProps) {
	if (!question) return <p className="detail-hint">Choose where the two leads go.</p>;
	if (error instanceof EngineFault && error.kind === "refused")
		return (
			<section className="notice stack" data-tone="warn" role="alert">
				<h2>No reading here</h2>
				<p>{sentence(error.message)}</p>
			</section>
		);
	if (error) return <FaultNotice title="This cannot be computed" error={error} />;
	if (!reading) return <Working what="Solving the network" />;
	return (
		<>
			<Shown reading={reading} />
			<Gauge reading={reading} />
			<h3>How to connect</h3>
			<p>{reading.how}</p>
			<Grounds grounds={reading.grounds} />
			<TakeDown key={JSON.stringify(question)} question={question} reading={reading} />
		</>
	);
}

function Shown({ reading: { value, low, high, unit, open } }: { reading: Reading }) {
	if (open || value === undefined)
		return (
			<>
				<p className="answer-value">open</p>
				<p className="soft">
					Nothing conducts between the two points in this condition: the meter shows open.
				</p>
			</>
		);
	return (
		<>
			<p className="answer-value">{amount(value, unit)}</p>
			{low !== undefined && high !== undefined && (
				<p>
					95 of 100 sound cars read between <strong>{amount(low, unit)}</strong> and{" "}
					<strong>{amount(high, unit)}</strong>.
				</p>
			)}
		</>
	);
}

const sentence = (text: string) =>
	`${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;
