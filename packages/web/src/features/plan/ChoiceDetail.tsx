/** One circuit: how it is made, what that costs, what the second best would cost more, and what was computed of it. */
import type { Choice, Proposal } from "../../server/choosing.js";
import { Facts } from "../../shared/Facts.js";
import { amount, count } from "../../shared/words.js";
import { CLOSE_MINUTES, minutesWords } from "./margins.js";

const WAYS: Readonly<Record<string, string>> = {
	reuse: "The wires that are there do as they are.",
	extend: "A lead that is free is made longer.",
	join: "It is joined to a wire that is there.",
	move: "A terminal goes over to another cavity, with its lead.",
	new: "A new wire is laid.",
};

export function ChoiceDetail({ choice, proposal }: { choice: Choice; proposal: Proposal }) {
	const { circuit, title, way, text, joints, price, second, options } = choice;
	const check = proposal.checks.find((one) => one.circuit === circuit);
	const steps = proposal.steps.filter((step) => step.title.startsWith(`${title}: `));
	return (
		<article className="stack">
			<h2 className="cap">{title || circuit}</h2>
			<div className="versus">
				<section className="panel stack" data-best="true">
					<h3>
						Chosen: <span className="tag">{way}</span>
					</h3>
					<p className="way-text">{text}</p>
					<p className="soft">{WAYS[way]}</p>
					<Facts
						facts={[
							["Work", minutesWords(price.minutes)],
							["Joints", String(joints)],
							["Risk", `${minutesWords(price.risk)} of fault finding`],
							["Material", price.material.toFixed(2)],
						]}
					/>
				</section>
				<section className="panel stack">
					{second ? (
						<>
							<h3>
								Second best: <span className="tag">{second.way}</span>
							</h3>
							<p className="way-text">{second.text}</p>
							<p className="soft">{WAYS[second.way]}</p>
							<p>
								With it the whole would cost <strong>{minutesWords(second.moreMinutes)}</strong> more.{" "}
								{second.moreMinutes < CLOSE_MINUTES
									? "That is close: go by which is better to reach and to see."
									: "That is clear."}
							</p>
						</>
					) : (
						<>
							<h3>No second best</h3>
							<p>There is no other way among those offered.</p>
						</>
					)}
				</section>
			</div>
			<p className="soft">
				{count(options, "way")} compared that could be best or second best. Work that other circuits need too,
				such as a housing opened, is counted once in the whole.
			</p>
			{check && (
				<p
					className="notice"
					data-tone={check.reached === "" || check.strays.length > 0 ? "stop" : undefined}
				>
					{check.reached === ""
						? "Computed after the recipe: it is joined to nothing."
						: `Computed after the recipe: joined to ${check.reached}, ${check.ohms === null ? "open" : amount(check.ohms, "ohm")} with the battery off.`}
					{check.strays.length > 0 && ` Joined besides, and should not be: ${check.strays.join(", ")}.`}
				</p>
			)}
			{steps.length > 0 && (
				<ul className="plain-list">
					{steps.map((step) => (
						<li key={step.step}>
							<span className="mono">{step.step}</span> {step.title.slice(title.length + 2)}
							{step.place && <span className="soft">, {step.place}</span>}
						</li>
					))}
				</ul>
			)}
		</article>
	);
}
