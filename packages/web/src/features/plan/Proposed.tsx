/** A proposal: the whole and its rivals, each choice with its second best, the steps, and how it becomes the recipe. */
import { Checkbox } from "@mantine/core";
import { useState } from "react";
import { useSettings } from "../../app/use-setting.js";
import type { Proposal } from "../../server/choosing.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { count } from "../../shared/words.js";
import { ChoiceDetail } from "./ChoiceDetail.js";
import { byMargin, CLOSE_MINUTES, minutesWords } from "./margins.js";
import { TakeOver } from "./TakeOver.js";
import { Whole } from "./Whole.js";

export function Proposed({ proposal }: { proposal: Proposal }) {
	const [query, set] = useSettings();
	const [closest, setClosest] = useState(false);
	if (!proposal.possible)
		return (
			<section className="notice stack" data-tone="stop">
				<h2>Some circuit cannot be made, so nothing is proposed</h2>
				<ul>
					{proposal.hopeless.map(({ circuit, why }) => (
						<li key={circuit}>
							<strong className="mono">{circuit}</strong>: {why}
						</li>
					))}
				</ul>
			</section>
		);
	const { choices } = proposal;
	const shown = closest ? byMargin(choices) : choices;
	const chosen = query.get("circuit") ?? "";
	const open = choices.find(({ circuit }) => circuit === chosen);
	const close = choices.filter(({ second }) => second && second.moreMinutes < CLOSE_MINUTES).length;
	return (
		<>
			<p className="notice aside" data-tone="warn">
				A proposal is a draft for people who know the car. It knows the loom, not the metal: look at each way
				before you cut. The maker's procedures come first; restraint circuits are never planned.
			</p>
			<Whole proposal={proposal} />
			<div className="page-head aside">
				<h2>{count(choices.length, "circuit")}, each with what else it could be</h2>
				<Checkbox
					size="lg"
					className="tall"
					label={`Closest calls first (${close} under ${CLOSE_MINUTES} min)`}
					checked={closest}
					onChange={(event) => setClosest(event.currentTarget.checked)}
				/>
			</div>
			<ListAndDetail
				label="Circuits"
				rows={shown.map(({ circuit, title, way, text, second }) => ({
					...{ id: circuit, title: title || circuit, text: `${way}: ${text}` },
					end: second ? `+${minutesWords(second.moreMinutes)}` : "only way",
					endLabel: second
						? `The second best would cost ${minutesWords(second.moreMinutes)} more`
						: "There is no other way",
					tone: second && second.moreMinutes < CLOSE_MINUTES ? "warn" : "note",
				}))}
				open={open ? chosen : ""}
				onOpen={(circuit) => set({ circuit })}
				empty="The target wants no circuit."
			>
				{open && <ChoiceDetail key={chosen} choice={open} proposal={proposal} />}
			</ListAndDetail>
			<details className="fold sheet aside">
				<summary>The recipe it makes: {count(proposal.steps.length, "step")}</summary>
				<ol className="proposal-steps">
					{proposal.steps.map(({ step, kind, title, place }) => (
						<li key={step}>
							<span className="mono">{step}</span>
							<span>
								<strong className="cap">{title}</strong>
								<span className="soft">{[kind, place].filter(Boolean).join(", ")}</span>
							</span>
						</li>
					))}
				</ol>
			</details>
			<TakeOver proposal={proposal} />
		</>
	);
}
