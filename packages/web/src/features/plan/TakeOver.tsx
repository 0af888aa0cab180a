/** The proposal becomes the car's recipe, as a new version; or goes onto a stick as tables. */
import { Button } from "@mantine/core";
import { useState } from "react";
import type { Proposal } from "../../server/choosing.js";
import { ReplaceTables } from "../../shared/ReplaceTables.js";
import { saveText } from "../../shared/save-text.js";

export function TakeOver({ proposal: { files } }: { proposal: Proposal }) {
	const [asked, setAsked] = useState(false);
	return (
		<section className="sheet stack aside" aria-label="Take it over">
			<h2>Take it over</h2>
			<p>
				As the car's recipe it becomes a new version; the one that stands now stays readable. What was done by
				hand in its place, and is not in the target, is not in it.
			</p>
			<div className="buttons">
				{!asked && <Button onClick={() => setAsked(true)}>See what it would change</Button>}
				{Object.entries(files).map(([name, text]) => (
					<Button key={name} variant="default" onClick={() => saveText(name, text)}>
						Save {name}
					</Button>
				))}
			</div>
			{asked && (
				<ReplaceTables tables={files} confirm="Make it the car's recipe" onCancel={() => setAsked(false)} />
			)}
		</section>
	);
}
