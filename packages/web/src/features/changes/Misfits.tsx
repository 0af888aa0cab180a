/** Steps of the recipe that do not fit this car: first of all, since nothing of them is in the converted loom. */
import type { Misfit } from "@loomwright/engine";
import { count } from "../../shared/words.js";

export function Misfits({ misfits }: { misfits: readonly Misfit[] }) {
	if (misfits.length === 0) return null;
	return (
		<section className="notice stack" data-tone="stop">
			<h2>{count(misfits.length, "step of the recipe does", "steps of the recipe do")} not fit this car</h2>
			<p>
				Nothing of such a step is in the loom as converted. Mend the row in recipe.csv before anyone cuts.
			</p>
			<ul>
				{misfits.map((misfit) => (
					<li key={misfit.text}>
						<strong>
							Step {misfit.step}, {misfit.kind}
						</strong>{" "}
						(recipe.csv, row {misfit.row}, column {misfit.column}): {misfit.problem}. What would be right:{" "}
						{misfit.wanted}.
					</li>
				))}
			</ul>
		</section>
	);
}
