/** How the car must stand for the readings that follow. */
import type { ProveSheet, SheetPart } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { Cautions } from "../../shared/Cautions.js";
import { count } from "../../shared/words.js";
import { preparation } from "./rows.js";

interface StandingProps {
	readonly sheet: ProveSheet;
	readonly part: SheetPart;
	/** Condition in which the car stands now. */
	readonly standing: string;
	readonly onStand: () => void;
}

export function Standing({ sheet, part, standing, onStand }: StandingProps) {
	const first = part.rows[0]?.number ?? 0;
	const last = part.rows.at(-1)?.number ?? 0;
	return (
		<section className="card stack" aria-label="How the car must stand">
			<p className="next-word">
				{first === last ? `For row ${first}` : `For rows ${first} to ${last}`}
				<span className="soft">, {count(part.rows.length, "reading")}</span>
			</p>
			<h2 className="cap">{part.title}</h2>
			<Cautions cautions={part.cautions} />
			<ol className="steps-to-do">
				{preparation(sheet, part, standing).map((step) => (
					<li key={step}>{step}</li>
				))}
			</ol>
			<Button size="xl" onClick={onStand}>
				The car stands so
			</Button>
		</section>
	);
}
