/** What a fault predicts for the readings taken and not yet taken, its path in words, and what would refute it. */
import {
	conditionWords,
	type Evidence,
	type Explanation,
	type Found,
	type Loom,
	type Question,
} from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { useExplanation } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { count, percent } from "../../shared/words.js";
import { shownWords } from "../meter/band.js";
import { unitOf, WHATS } from "../reading/whats.js";
import { isOffered } from "./offered.js";
import { type Predicted, showsWords, telling } from "./predicted.js";
import { SheetRefutes } from "./SheetRefutes.js";
import type { Case } from "./use-case.js";

interface ExplainedProps {
	readonly evidence: Evidence;
	readonly found: Found;
	/** Its id. */
	readonly fault: string;
	readonly shown: Case;
	/** Takes a reading instead of the one proposed. */
	readonly onChoose: (question: Question) => void;
}

export function Explained({ evidence, found, fault, shown, onChoose }: ExplainedProps) {
	const explained = useExplanation(evidence, fault);
	const loom = useCar().car[shown.which];
	if (explained.error) return <FaultNotice title="This cannot be explained" error={explained.error} />;
	if (!explained.data) return <Working what="Working out what it predicts" />;
	const { taken, notTaken, refutes, path } = explained.data;
	return (
		<>
			<Path path={path} />
			<Predictions
				heading="What it predicts where you have read"
				list={telling(taken)}
				all={taken}
				loom={loom}
			/>
			<Predictions heading="What it predicts where you have not" list={notTaken} all={notTaken} loom={loom} />
			{shown.proving === "battery off" ? (
				<SheetRefutes fault={fault} />
			) : (
				<Refutes refutes={refutes} found={found} loom={loom} onChoose={onChoose} />
			)}
		</>
	);
}

const Path = ({ path }: Pick<Explanation, "path">) => (
	<details className="fold">
		<summary>Its path: {count(path.length, "place")} to look at</summary>
		<ul className="bullets">
			{path.map(({ id, text, place }) => (
				<li key={id}>
					{text}
					{place !== "" && <span className="soft">; {place}</span>}
				</li>
			))}
		</ul>
	</details>
);

interface PredictionsProps {
	readonly heading: string;
	/** Those shown at once. */
	readonly list: readonly Predicted[];
	readonly all: readonly Predicted[];
	readonly loom: Loom;
}

function Predictions({ heading, list, all, loom }: PredictionsProps) {
	if (all.length === 0) return null;
	const rest = all.filter((one) => !list.includes(one));
	return (
		<section className="stack">
			<h3>{heading}</h3>
			{list.length > 0 && <PredictionList list={list} loom={loom} />}
			{rest.length > 0 && (
				<details className="fold">
					<summary>{count(rest.length, "reading")} where it shows as a sound car does</summary>
					<PredictionList list={rest} loom={loom} />
				</details>
			)}
		</section>
	);
}

const PredictionList = ({ list, loom }: { list: readonly Predicted[]; loom: Loom }) => (
	<ul className="predicted">
		{list.map((one, k) => (
			// biome-ignore lint/suspicious/noArrayIndexKey: the same may be read on several occasions, in fixed order
			<li key={k}>
				<QuestionWords question={one.question} loom={loom} />
				<dl>
					<div>
						<dt>with this fault</dt>
						<dd>{showsWords(one)}</dd>
					</div>
					<div>
						<dt>on a sound car</dt>
						<dd>{one.sound}</dd>
					</div>
					{one.value !== undefined && (
						<div>
							<dt>you read</dt>
							<dd>{shownWords(one.value, unitOf(one.question.what))}</dd>
						</div>
					)}
				</dl>
			</li>
		))}
	</ul>
);

function QuestionWords({ question: { what, from, to, when }, loom }: { question: Question; loom: Loom }) {
	return (
		<p>
			<strong>
				{WHATS.find(({ value }) => value === what)!.label} from {from} to {to}
			</strong>
			<span className="soft">, {conditionWords(loom, when)}</span>
		</p>
	);
}

interface RefutesProps extends Pick<Explanation, "refutes"> {
	readonly found: Found;
	readonly loom: Loom;
	readonly onChoose: (question: Question) => void;
}

const SHOWN = 3;

function Refutes({ refutes, found, loom, onChoose }: RefutesProps) {
	if (refutes.length === 0)
		return <p className="soft">No reading on offer would refute it: inspect it, or mend it and try.</p>;
	return (
		<section className="stack">
			<h3>What would refute it</h3>
			<ul className="row-list">
				{refutes.slice(0, SHOWN).map(({ question, text, chance }) => (
					<li key={text} className="row form-row">
						<span className="row-main">
							<QuestionWords question={question} loom={loom} />
							<span>{text.slice(text.lastIndexOf("anything but"))}</span>
							<span className="soft">
								shows so in {percent(chance)} of the cases if another fault is there
							</span>
						</span>
						{isOffered(found, question) && (
							<Button
								variant="default"
								onClick={() => {
									onChoose(question);
									document.querySelector(".next")?.scrollIntoView({ behavior: "smooth" });
								}}
							>
								Take it next
							</Button>
						)}
					</li>
				))}
			</ul>
		</section>
	);
}
