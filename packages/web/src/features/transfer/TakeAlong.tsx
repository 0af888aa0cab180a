/** The draft of a recipe for the other car: saved as tables, or put into its job, to be decided on there. */
import { Button } from "@mantine/core";
import { useState } from "react";
import { go } from "../../app/route.js";
import { ReplaceTables } from "../../shared/ReplaceTables.js";
import { saveText } from "../../shared/save-text.js";

interface TakeAlongProps {
	readonly files: Readonly<Record<string, string>>;
	readonly name: string;
	/** Id of the other car's job; empty: it is none. */
	readonly to: string;
}

export function TakeAlong({ files, name, to }: TakeAlongProps) {
	const [asked, setAsked] = useState(false);
	return (
		<section className="sheet stack" aria-label="Take it along">
			<h3>A draft for {name}</h3>
			<p>
				The steps that can be done there, in the names of that car; what must be decided stands in a step's
				note. Steps that cannot be done there are not in it: what they were for needs steps of its own. How
				its new switches stand in each condition must be added to conditions.csv of that car.
			</p>
			<div className="buttons">
				{to !== "" && !asked && (
					<Button onClick={() => setAsked(true)}>See what it would change in that job</Button>
				)}
				{Object.entries(files).map(([file, text]) => (
					<Button key={file} variant="default" onClick={() => saveText(file, text)}>
						Save {file}
					</Button>
				))}
			</div>
			{asked && (
				<ReplaceTables
					job={to}
					tables={files}
					confirm="Put it into that job"
					onCancel={() => setAsked(false)}
					onDone={() => {
						go({ job: to, stage: "changes", query: new URLSearchParams({ view: "steps" }) });
						// What was computed of that car before is of its tables before.
						window.location.reload();
					}}
				/>
			)}
		</section>
	);
}
