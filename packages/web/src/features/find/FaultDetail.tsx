/** Why a fault stands where it stands, what mends it, where it is. */
import type { Found, Question, RankedFault } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { Drawing } from "../../drawing/view/Drawing.js";
import { Explained } from "./Explained.js";
import { Repaired } from "./Repaired.js";
import { timesWords } from "./times-words.js";
import type { Case } from "./use-case.js";

interface FaultDetailProps {
	readonly fault: RankedFault;
	readonly found: Found;
	readonly shown: Case;
	/** Faults that no reading or code of this car can tell from it. */
	readonly alike: readonly string[];
	readonly onChoose: (question: Question) => void;
}

export function FaultDetail({ fault, found, shown, alike, onChoose }: FaultDetailProps) {
	const { id, place, grounds, path, mend } = fault;
	const { which } = shown;
	const [drawn, setDrawn] = useState(false);
	return (
		<div className="fault-detail stack">
			{place && <p className="soft">{place}</p>}
			{grounds.length > 0 && <h3>Why it stands here</h3>}
			<ul className="grounds">
				{grounds.map(({ text, times }, k) => (
					// biome-ignore lint/suspicious/noArrayIndexKey: the same may be seen on several occasions, in fixed order
					<li key={k}>
						<span className="cap">{text}</span>
						<span data-for={times >= 1 || undefined}>{timesWords(times)}</span>
					</li>
				))}
			</ul>
			<h3>What mends it</h3>
			<p className="cap">{mend}</p>
			{alike.length > 0 && (
				<>
					<h3>Cannot be told from it by any reading</h3>
					<ul className="bullets">
						{alike.map((words) => (
							<li key={words}>{words}</li>
						))}
					</ul>
				</>
			)}
			{shown.evidence && (
				<Explained evidence={shown.evidence} found={found} fault={id} shown={shown} onChoose={onChoose} />
			)}
			{shown.practice === "" && <Repaired fault={fault} />}
			<Button variant="default" onClick={() => setDrawn(!drawn)}>
				{drawn ? "Close the drawing" : "Show it in the drawing"}
			</Button>
			{drawn && <Drawing which={which} path={path} />}
		</div>
	);
}
