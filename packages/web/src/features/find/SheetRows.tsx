/** Before power: no reading with the battery on; instead the rows of the prove sheet that would tell most. */
import type { Found } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { useProveSheet } from "../../engine/hooks.js";
import { Working } from "../../shared/Working.js";
import { percent } from "../../shared/words.js";
import { useSheetWork } from "../prove/use-sheet-work.js";
import { worthReading } from "./sheet-rows.js";
import type { Case } from "./use-case.js";

const SHOWN = 5;

export function SheetRows({ found, shown }: { found: Found; shown: Case }) {
	const { job } = useCar();
	const sheet = useProveSheet().data;
	const { taken } = useSheetWork();
	if (!sheet) return <Working what="Looking for rows of the sheet that would tell more" />;
	const worth = worthReading(sheet, taken, found).slice(0, SHOWN);
	return (
		<section className="card next stack" aria-label="Rows of the prove sheet worth reading">
			<p className="next-word">Battery off until the sheet passes</p>
			<h2>
				{worth.length > 0
					? "Rows of the sheet that would tell most"
					: "No row left on the sheet would tell more"}
			</h2>
			{worth.length === 0 && <p>Inspect what stands in the list below, beginning at the top.</p>}
			<ul className="row-list">
				{worth.map(({ row, chance }) => (
					<li key={row.number}>
						<a
							className="row"
							href={formatRoute({
								job: job.id,
								stage: "prove",
								query: new URLSearchParams({ row: String(row.number) }),
							})}
						>
							<span className="prove-number">{row.number}</span>
							<span className="row-main">
								<strong>
									{row.question.from} to {row.question.to}
								</strong>
								<span className="soft">
									{row.place === row.toPlace ? row.place : `${row.place}, and ${row.toPlace}`}
								</span>
							</span>
							<span className="row-end">not right: {percent(chance)}</span>
						</a>
					</li>
				))}
			</ul>
			<Button variant="default" onClick={shown.powered}>
				The car is under power
			</Button>
		</section>
	);
}
