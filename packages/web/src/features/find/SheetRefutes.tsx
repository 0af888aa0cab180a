/** Rows of the prove sheet that would refute a fault by being right. */
import { useProveSheet } from "../../engine/hooks.js";
import { rowsOf, stateOf } from "../prove/rows.js";
import { useSheetWork } from "../prove/use-sheet-work.js";

const SHOWN = 3;

export function SheetRefutes({ fault }: { fault: string }) {
	const sheet = useProveSheet().data;
	const { taken } = useSheetWork();
	if (!sheet) return null;
	const rows = rowsOf(sheet).filter((row) => row.catches.includes(fault) && stateOf(row, taken) === "unread");
	if (rows.length === 0)
		return (
			<p className="soft">No row left on the sheet would refute it: inspect it, or mend it and read again.</p>
		);
	return (
		<section className="stack">
			<h3>What would refute it</h3>
			<ul className="bullets">
				{rows.slice(0, SHOWN).map((row) => (
					<li key={row.number}>
						Row {row.number} of the sheet, {row.question.from} to {row.question.to}, if it is right
					</li>
				))}
			</ul>
		</section>
	);
}
