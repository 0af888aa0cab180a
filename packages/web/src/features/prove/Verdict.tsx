/** Right or not, in one glance, and what to do then. */
import type { ProveSheet, SheetRow } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { bandWords, passes, shownWords } from "../meter/band.js";
import { FindButton } from "./FindButton.js";
import { actsOfSheet, type Taken } from "./rows.js";
import type { SheetWork } from "./use-sheet-work.js";

interface VerdictProps {
	readonly sheet: ProveSheet;
	readonly row: SheetRow;
	readonly taken: Taken;
	readonly work: SheetWork;
	readonly onAgain: () => void;
	readonly onOn: () => void;
}

export function Verdict({ sheet, row, taken, work, onAgain, onOn }: VerdictProps) {
	if ("leftOut" in taken)
		return (
			<div className="verdict-do stack">
				<p className="verdict">Left out</p>
				<p className="cap">{taken.leftOut}.</p>
				<Button size="xl" onClick={onAgain}>
					Read it after all
				</Button>
				<Button size="xl" variant="default" onClick={onOn}>
					Go on
				</Button>
			</div>
		);
	const right = passes(row, taken.value);
	return (
		<div className="verdict-do stack">
			<div className="verdict" data-tone={right ? "calm" : "stop"} role={right ? undefined : "alert"}>
				<span>{right ? "Right" : "Not right"}</span>
				<span className="verdict-value">{shownWords(taken.value, "ohm")}</span>
				<span className="verdict-band">must show {bandWords({ ...row, unit: "ohm" })}</span>
			</div>
			{!right && (
				<>
					<p>Are both leads on the right contacts, and was the meter zeroed? If so, do not go on to power.</p>
					<FindButton acts={actsOfSheet(sheet, work.taken)} proving="battery off" />
				</>
			)}
			<Button size="xl" variant="default" onClick={onAgain}>
				Read it once more
			</Button>
			<Button size="xl" variant="default" onClick={onOn}>
				{right ? "Go on" : "Go on, mend it later"}
			</Button>
		</div>
	);
}
