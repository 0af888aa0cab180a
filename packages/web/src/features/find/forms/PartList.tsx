/** Parts of the car by words, each with its own buttons. */
import type { Part } from "@loomwright/engine";
import { Button, TextInput } from "@mantine/core";
import { type ReactNode, useState } from "react";

interface PartListProps {
	readonly parts: readonly Part[];
	readonly buttons: (part: Part) => ReactNode;
}

const SHOWN = 60;

export function PartList({ parts, buttons }: PartListProps) {
	const [text, setText] = useState("");
	const [most, setMost] = useState(SHOWN);
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	const found = parts.filter(({ id, kind, label, place }) => {
		const all = `${id} ${kind} ${label} ${place}`.toLowerCase();
		return words.every((word) => all.includes(word));
	});
	return (
		<div className="stack">
			<TextInput
				data-autofocus
				label="Search"
				placeholder="name, kind or place"
				value={text}
				onChange={(event) => setText(event.currentTarget.value)}
			/>
			<ul className="row-list">
				{found.slice(0, most).map((part) => (
					<li key={part.id} className="row form-row">
						<span className="row-main">
							<strong className="mono">{part.id}</strong>
							<span className="soft">{[part.label, part.kind, part.place].filter(Boolean).join(", ")}</span>
						</span>
						{buttons(part)}
					</li>
				))}
			</ul>
			{found.length === 0 && <p>No part has these words.</p>}
			{found.length > most && (
				<Button variant="default" onClick={() => setMost(most + SHOWN)}>
					Show more of {found.length}
				</Button>
			)}
		</div>
	);
}
