/** One stage: what to mind, what to connect, what to read, what must be true, and the way on once all of it holds. */
import type { Stage } from "@loomwright/engine";
import { Button, Checkbox } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { Cautions } from "../../shared/Cautions.js";
import { Facts } from "../../shared/Facts.js";
import type { Act } from "../find/acts.js";
import { StepSigns } from "../people/StepSigns.js";
import { StageReadings } from "./StageReadings.js";
import { missing, seenKey } from "./stages.js";
import { type Power, stepOf } from "./use-power-work.js";

interface StageCardProps {
	readonly stage: Stage;
	/** How many stages there are. */
	readonly of: number;
	/** Only the stage to do leads on to the next. */
	readonly standing: "now" | "left behind";
	readonly power: Power;
	/** Every row of the prove sheet is right or left out. */
	readonly proved: boolean;
	/** What is left of the prove sheet. */
	readonly sheetWords: string;
	/** What is handed to finding where a reading is not right. */
	readonly acts: readonly Act[];
	readonly onNext: () => void;
}

export function StageCard({ stage, of, standing, power, proved, sheetWords, acts, onNext }: StageCardProps) {
	const { number, title, connect, live, safe, cautions, mustBeTrue } = stage;
	const left = missing(stage, power.work, proved);
	return (
		<article className="power-stage stack" aria-label={`Stage ${number + 1}`}>
			<p className="next-word">
				Stage {number + 1} of {of}
			</p>
			<h2 className="cap">{title}</h2>
			<Cautions cautions={cautions} />
			<h3>Do</h3>
			<ol className="steps-to-do">
				{connect.map((step) => (
					<li key={step}>{step}</li>
				))}
			</ol>
			{stage.read.length > 0 && <StageReadings stage={stage} power={power} acts={acts} />}
			<h3>Must be true before you go on</h3>
			{stage.kind === "before power" ? (
				<SheetGate proved={proved} words={sheetWords} text={mustBeTrue.join(" ")} />
			) : (
				mustBeTrue.map((text) => (
					<Checkbox
						key={text}
						size="xl"
						className="tall power-tick"
						label={text}
						checked={power.work.seen.includes(seenKey(stage, text))}
						onChange={(event) => power.see(stage, text, event.currentTarget.checked)}
					/>
				))
			)}
			<Facts
				facts={[
					["Becomes live", live.join(", ")],
					["Safe to count on", safe.join(" ")],
				]}
			/>
			<div className="power-gate" data-open={left.length === 0 || undefined}>
				<p>{left.length === 0 ? "All of it holds." : `Still ${left.join(", ")}.`}</p>
				{standing === "now" && (
					<Button size="xl" disabled={left.length > 0} onClick={onNext}>
						{number + 1 < of ? `On to stage ${number + 2}` : "Powered up"}
					</Button>
				)}
			</div>
			{left.length === 0 && <StepSigns step={stepOf(stage)} title={title} />}
			<p className="soft">
				Something else than this: undo what this stage connected, battery off, and find the cause first.
			</p>
		</article>
	);
}

/** The sheet says by itself whether it passes. */
function SheetGate({ proved, words, text }: { proved: boolean; words: string; text: string }) {
	const { job } = useCar();
	return (
		<div className="notice stack" data-tone={proved ? "calm" : "stop"}>
			<p>
				{text} {proved ? "It does." : `Not yet: ${words}.`}
			</p>
			{!proved && (
				<Button component="a" variant="default" href={formatRoute({ job: job.id, stage: "prove" })}>
					To the prove sheet
				</Button>
			)}
		</div>
	);
}
