/** What the meter should show between any two points, in any condition. */
import type { Question, What } from "@loomwright/engine";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { ConditionChoice } from "../../drawing/view/ConditionChoice.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import { useReading, useWayBetween } from "../../engine/hooks.js";
import { Choice } from "../../shared/Choice.js";
import { LoomChoice } from "../../shared/LoomChoice.js";
import { PointPicker } from "../../shared/PointPicker.js";
import { Answer } from "./Answer.js";
import { defaultCondition } from "./default-condition.js";
import { TapPoint } from "./TapPoint.js";
import { WHATS, whatOf } from "./whats.js";

export function ReadingStage() {
	const { car } = useCar();
	const [query, set] = useSettings();
	const which = whichOf(query);
	const get = (name: string) => query.get(name) ?? "";
	const [from, to, what] = [get("from"), get("to"), whatOf(get("what"))];
	const loom = car[which];
	const when = loom.conditions.has(get("when")) ? get("when") : defaultCondition(loom, what);
	const question: Question | undefined = from && to ? { what, from, to, when } : undefined;
	const reading = useReading(which, question);
	const way = useWayBetween(which, from, to);
	const [tapped, setTapped] = useState("");
	const leads = new Map([
		[from.replace(/!pin$/, ""), "1"],
		[to.replace(/!pin$/, ""), "2"],
	]);
	return (
		<div className="page">
			<div className="page-head">
				<h1>Reading</h1>
				<LoomChoice value={which} onChange={(loom) => set({ loom })} />
			</div>
			<div className="ask-answer">
				<section className="ask stack" aria-label="Question">
					<PointPicker
						which={which}
						label="Lead 1, red"
						value={from}
						onPick={(point) => set({ from: point })}
					/>
					<PointPicker
						which={which}
						label="Lead 2, black"
						value={to}
						onPick={(point) => set({ to: point })}
					/>
					<Choice<What>
						label="What the meter is set to"
						value={what}
						options={WHATS}
						onChange={(value) => set({ what: value })}
					/>
					<ConditionChoice
						which={which}
						value={when}
						onChange={(value) => set({ when: value })}
						label="How the car stands"
					/>
				</section>
				<section className="answer stack" aria-label="Answer" aria-live="polite">
					<Answer question={question} reading={reading.data} error={reading.error} />
				</section>
			</div>
			{way.data && question && (
				<section className="card stack">
					<h2>Where the leads go</h2>
					<p className="soft">Tap a contact or a splice in the drawing to put a lead there.</p>
					{tapped !== "" && (
						<TapPoint
							point={tapped}
							onLead={(lead) => {
								set({ [lead]: tapped });
								setTapped("");
							}}
							close={() => setTapped("")}
						/>
					)}
					<Drawing which={which} path={way.data} when={when} leads={leads} onPoint={setTapped} />
				</section>
			)}
		</div>
	);
}
