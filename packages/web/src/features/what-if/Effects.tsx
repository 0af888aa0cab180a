/** What a change would do: to what the rules say, to readings, to sizes, to the work. */
import type { Finding } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import type { Supposition } from "../../engine/protocol.js";
import { ReplaceTables } from "../../shared/ReplaceTables.js";
import { lengthWords } from "../../shared/wire-words.js";
import { count, duration } from "../../shared/words.js";
import { severityOf } from "../checks/severity.js";
import { sizeLines, verdictOf } from "./judged.js";

/** Readings shown at first. */
const FEW = 8;

export function Effects({ effects, words }: { effects: Supposition; words: string }) {
	const { findings, readings, cost, misfits } = effects;
	const { tone, text } = verdictOf(effects);
	const sizes = sizeLines(effects);
	const { before, after } = cost;
	return (
		<section className="stack effects" aria-label="What would happen">
			<div className="notice stack" data-tone={tone} role="status">
				<h3>{words}</h3>
				<p>{text}</p>
			</div>
			<dl className="figures">
				<Moves name="work of the recipe" was={before.minutes} is={after.minutes} words={duration} />
				<Moves name="splices in the loom" was={before.splices} is={after.splices} words={String} />
				<Moves name="wire the recipe brings" was={before.metres} is={after.metres} words={lengthWords} />
			</dl>
			{misfits.length > 0 && (
				<ul className="notice stack" data-tone="stop">
					{misfits.map(({ step, problem }) => (
						<li key={step}>
							Step {step} would not fit: {problem}.
						</li>
					))}
				</ul>
			)}
			<FindingList title="The rules would say" findings={findings.come} />
			<FindingList title="The rules would no longer say" findings={findings.gone} />
			{sizes.length > 0 && (
				<>
					<h3>Sizes</h3>
					<ul className="plain-list">
						{sizes.map(({ text: line, tone: at }) => (
							<li key={line} data-tone={at}>
								{line}
							</li>
						))}
					</ul>
				</>
			)}
			{readings.length > 0 && <Readings readings={readings} />}
			<MakeItSo tables={effects.tables} />
		</section>
	);
}

/** What was only supposed goes into the tables, shown row by row before it does. */
function MakeItSo({ tables }: { tables: Supposition["tables"] }) {
	const [asked, setAsked] = useState(false);
	if (!asked)
		return (
			<Button variant="default" onClick={() => setAsked(true)}>
				Put it into the tables
			</Button>
		);
	return <ReplaceTables tables={tables} confirm="Make it so" onCancel={() => setAsked(false)} />;
}

interface MovesProps {
	readonly name: string;
	readonly was: number;
	readonly is: number;
	readonly words: (value: number) => string;
}

const Moves = ({ name, was, is, words }: MovesProps) => (
	<div>
		<dt>{name}</dt>
		<dd>
			{Math.abs(is - was) < 1e-9 ? (
				<>
					{words(is)} <small>as before</small>
				</>
			) : (
				<>
					<small>{words(was)}</small> <span className="arrow">→</span> {words(is)}
				</>
			)}
		</dd>
	</div>
);

function FindingList({ title, findings }: { title: string; findings: readonly Finding[] }) {
	if (findings.length === 0) return null;
	return (
		<>
			<h3>{title}</h3>
			<ul className="stack">
				{findings.map(({ rule, severity, where, why, mend }) => (
					<li key={`${rule} ${where}`} className="panel">
						<span className="tag" data-tone={severity}>
							{severityOf(severity).word}
						</span>{" "}
						<strong>{rule.replaceAll("-", " ")}</strong>: {where}. {why} <em>{mend}</em>
					</li>
				))}
			</ul>
		</>
	);
}

/** Hundredths, as a meter shows them. */
const volts = (value: number | undefined) => (value === undefined ? "open" : `${value.toFixed(2)} V`);

function Readings({ readings }: { readings: Supposition["readings"] }) {
	const { conditions } = useCar().car.converted;
	const [all, setAll] = useState(false);
	return (
		<>
			<h3>{count(readings.length, "reading moves", "readings move")} by more than a meter tells</h3>
			<div className="scroll-x">
				<table className="plain-table">
					<thead>
						<tr>
							<th>Against the battery's minus</th>
							<th>When it moves most</th>
							<th>Was</th>
							<th>Would be</th>
						</tr>
					</thead>
					<tbody>
						{(all ? readings : readings.slice(0, FEW)).map(({ contact, condition, before, after }) => (
							<tr key={contact}>
								<td className="mono">{contact}</td>
								<td>{conditions.get(condition)?.title || condition}</td>
								<td className="unbroken">{volts(before)}</td>
								<td className="unbroken">
									<strong>{volts(after)}</strong>
								</td>
							</tr>
						))}
					</tbody>
				</table>
			</div>
			{!all && readings.length > FEW && (
				<Button variant="default" onClick={() => setAll(true)}>
					Show all {readings.length}
				</Button>
			)}
		</>
	);
}
