/** How the two cars differ as delivered, by connector or part. */
import type { Change } from "@loomwright/engine";
import { TextInput } from "@mantine/core";
import { useState } from "react";
import { count } from "../../shared/words.js";

/** Lines drawn at once. */
const MOST = 200;

export function Differences({ differences }: { differences: readonly Change[] }) {
	const [text, setText] = useState("");
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	const found = differences.filter((change) =>
		words.every((word) => `${change.kind} ${change.connector} ${change.text}`.toLowerCase().includes(word)),
	);
	return (
		<details className="fold sheet">
			<summary>{count(differences.length, "difference")} of the two cars as delivered</summary>
			<div className="stack">
				<TextInput
					label="Search the differences"
					placeholder="connector, wire, colour or words"
					value={text}
					onChange={(event) => setText(event.currentTarget.value)}
				/>
				<ul className="plain-list">
					{found.slice(0, MOST).map((change) => (
						<li key={change.kind + change.text}>
							<span className="soft">{change.kind}</span> {change.text}
						</li>
					))}
				</ul>
				{found.length > MOST && <p>and {found.length - MOST} more: search for them.</p>}
				{found.length === 0 && <p>No difference has these words.</p>}
			</div>
		</details>
	);
}
