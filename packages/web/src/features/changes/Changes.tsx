/** What the conversion cuts and joins: by connector and cavity, or as the steps of the recipe in order. */
import { SegmentedControl } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { versionWords } from "../../shared/version-words.js";
import { ByConnector } from "./ByConnector.js";
import { Misfits } from "./Misfits.js";
import { Steps } from "./Steps.js";

export function Changes() {
	const { car, recipe } = useCar();
	const { misfits } = car;
	const [query, set] = useSettings();
	const steps = query.get("view") === "steps";
	return (
		<div className="page">
			<div className="page-head">
				<h1>Changes</h1>
				<SegmentedControl
					aria-label="How the changes are listed"
					value={steps ? "steps" : "cavities"}
					data={[
						{ value: "cavities", label: "By connector" },
						{ value: "steps", label: "Steps in order" },
					]}
					onChange={(view) => set({ view: view === "steps" ? "steps" : "" })}
				/>
			</div>
			<p className="recipe-stands">{versionWords(recipe)}</p>
			<Misfits misfits={misfits} />
			{steps ? <Steps /> : <ByConnector />}
		</div>
	);
}
