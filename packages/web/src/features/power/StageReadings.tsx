/** The readings of a stage: one open at a time with its leads and keys, the others as lines to tap. */
import type { Stage, StageReading } from "@loomwright/engine";
import { UnstyledButton } from "@mantine/core";
import { useState } from "react";
import type { Act } from "../find/acts.js";
import { bandWords, passes, shownWords } from "../meter/band.js";
import { Leads } from "../meter/Leads.js";
import { MeterPad } from "../meter/MeterPad.js";
import { FindButton } from "../prove/FindButton.js";
import { provingIn, readingKey } from "./stages.js";
import type { Power } from "./use-power-work.js";

interface StageReadingsProps {
	readonly stage: Stage;
	readonly power: Power;
	readonly acts: readonly Act[];
}

export function StageReadings({ stage, power, acts }: StageReadingsProps) {
	const { read } = power.work;
	const [chosen, setChosen] = useState("");
	const stateOf = (reading: StageReading) => {
		const value = read[readingKey(stage, reading)];
		return value === undefined ? "unread" : passes(reading, value) ? "right" : "wrong";
	};
	const wrong = stage.read.some((reading) => stateOf(reading) === "wrong");
	const unread = stage.read.find((reading) => stateOf(reading) === "unread");
	// Where one is wrong the next does not open by itself: it is to be stopped for.
	const open = chosen || (unread && !wrong ? readingKey(stage, unread) : "");
	return (
		<>
			<h3>Read</h3>
			<ul className="row-list">
				{stage.read.map((reading, k) => {
					const key = readingKey(stage, reading);
					const value = read[key];
					const before = stage.read[k - 1];
					return (
						<li key={key}>
							{key === open ? (
								<OpenReading
									reading={reading}
									before={before}
									onShown={(shown) => {
										power.take(stage, reading, shown);
										setChosen("");
									}}
								/>
							) : (
								<UnstyledButton
									className="row"
									data-tone={{ unread: undefined, right: "note", wrong: "stop" }[stateOf(reading)]}
									onClick={() => setChosen(key)}
								>
									<span className="row-main">
										<span>
											<strong>{reading.from}</strong> to {reading.to}
										</span>
										<span className="soft">must show {bandWords(reading)}</span>
									</span>
									<span className="row-end">
										{value === undefined
											? "to read"
											: `${stateOf(reading) === "right" ? "right" : "not right"}: ${shownWords(value, reading.unit)}`}
									</span>
								</UnstyledButton>
							)}
						</li>
					);
				})}
			</ul>
			{wrong && (
				<div className="verdict" data-tone="stop" role="alert">
					<span>Not right</span>
					<span className="verdict-band">
						Stop. Undo what this stage connected. Read once more only if the leads were wrong.
					</span>
					<FindButton acts={acts} proving={provingIn(stage)} />
				</div>
			)}
		</>
	);
}

interface OpenReadingProps {
	readonly reading: StageReading;
	/** The reading taken before it. */
	readonly before: StageReading | undefined;
	readonly onShown: Parameters<typeof MeterPad>[0]["onShown"];
}

function OpenReading({ reading, before, onShown }: OpenReadingProps) {
	const { from, to, question } = reading;
	return (
		<div className="meter-bench">
			<Leads
				first={{ id: question?.from ?? "", words: from, place: "", stays: from === before?.from }}
				second={{ id: question?.to ?? "", words: to, place: "", stays: to === before?.to }}
				band={reading}
			/>
			<MeterPad band={reading} onShown={onShown} />
		</div>
	);
}
