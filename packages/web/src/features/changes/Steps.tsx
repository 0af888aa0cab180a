/** The steps of the recipe in the order of work, with place and minutes. */
import type { RecipeStep } from "@loomwright/engine";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { count, duration } from "../../shared/words.js";
import { StepSigns } from "../people/StepSigns.js";
import { FilterBar } from "./FilterBar.js";
import { placesOf } from "./groups.js";
import { stepWords } from "./step-words.js";

export function Steps() {
	const { recipe, misfits } = useCar().car;
	const [query, set] = useSettings();
	const [text, setText] = useState("");
	const place = query.get("place") ?? "";
	const shown = recipe.filter((step) => fits(step, text, place));
	const misfit = new Set(misfits.map(({ step }) => step));
	return (
		<>
			<FilterBar
				text={text}
				onText={setText}
				place={place}
				places={placesOf(recipe)}
				onPlace={(p) => set({ place: p })}
			/>
			<p className="soft">
				{count(shown.length, "step")}, {duration(shown.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0))}{" "}
				of work
			</p>
			<ol className="steps">
				{shown.map((step) => (
					<li key={step.row} className="step" data-misfit={misfit.has(step.step) || undefined}>
						<span className="step-number mono">{step.step}</span>
						<div>
							<strong className="cap">{step.title || step.kind}</strong>
							<div className="soft">
								<span className="tag">{step.kind}</span> {stepWords(step)}
							</div>
							{step.note && <div className="soft">{step.note}</div>}
							{misfit.has(step.step) && <div className="step-misfit">does not fit this car, see above</div>}
							<StepSigns step={`recipe/${step.step}`} title={step.title || step.kind} />
						</div>
						<span className="step-place">{step.place}</span>
						<span className="step-minutes">{step.minutes === undefined ? "" : `${step.minutes} min`}</span>
					</li>
				))}
			</ol>
			{shown.length === 0 && <p>No step fits this filter.</p>}
		</>
	);
}

function fits(step: RecipeStep, text: string, place: string): boolean {
	const wanted = text.trim().toLowerCase();
	const { title, kind, wire, other, from, to, part, fresh, joint, note } = step;
	const texts = [step.step, title, kind, wire, other, from, to, part, fresh, joint, note, step.place];
	return (place === "" || step.place === place) && texts.some((t) => t.toLowerCase().includes(wanted));
}
