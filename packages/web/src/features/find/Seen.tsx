/** What was seen so far, and the ways to add to it. */
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { SavedState } from "../../shared/SavedState.js";
import { count } from "../../shared/words.js";
import { AddAct } from "./AddAct.js";
import { actWords } from "./act-words.js";
import type { Case } from "./use-case.js";

/** Newest acts shown; of the prove sheet there may be hundreds. */
const MOST = 14;

export function Seen({ shown }: { shown: Case }) {
	const { practice, acts, ahead, which } = shown;
	const loom = useCar().car[which];
	const [whole, setWhole] = useState(false);
	const hidden = whole || acts.length <= MOST + 1 ? 0 : acts.length - MOST;
	return (
		<section className="card seen stack" aria-label="What was seen">
			<h2>{practice === "" ? "What was seen" : practice}</h2>
			{practice !== "" && (
				<div className="seen-practice stack">
					<p className="soft">
						Practice:{" "}
						{ahead.length === 0 ? "all of it is shown" : `${count(ahead.length, "more thing")} to see`}.
					</p>
					<Button disabled={ahead.length === 0} onClick={shown.next}>
						Show the next
					</Button>
				</div>
			)}
			{hidden > 0 && (
				<Button variant="default" onClick={() => setWhole(true)}>
					Show {hidden} earlier
				</Button>
			)}
			<ol className="acts" start={hidden + 1}>
				{acts.slice(hidden).map((act, k) => {
					const { sort, text } = actWords(act, loom);
					return (
						// biome-ignore lint/suspicious/noArrayIndexKey: acts are only added and taken off at the end
						<li key={k} data-kind={act.kind}>
							<strong>{sort}</strong>
							<span>{text}</span>
						</li>
					);
				})}
			</ol>
			{acts.length > 0 && (
				<div className="choice">
					<Button variant="default" onClick={shown.undo}>
						Take the last back
					</Button>
					<Button variant="default" onClick={shown.clear}>
						{practice === "" ? "Start over" : "Leave practice"}
					</Button>
				</div>
			)}
			<SavedState entry={shown.entry} />
			<h3>Add</h3>
			<AddAct which={which} onAct={(act) => shown.add(act)} />
		</section>
	);
}
