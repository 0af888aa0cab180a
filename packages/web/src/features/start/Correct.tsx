/** Takes an entry back with a reason; for a reading or a note, what is right is entered in the same go. */
import { Button, Modal, TextInput } from "@mantine/core";
import { useState } from "react";
import type { Entry, ReadingEntry, Writable } from "../../server/types.js";
import { ValueEntry } from "../../shared/ValueEntry.js";
import { unitOf } from "../reading/whats.js";

interface CorrectProps {
	readonly entry: Entry;
	/** The entry in words. */
	readonly words: string;
	/** The correction, then what is right if that was entered. */
	readonly onWrite: (written: readonly Writable[]) => void;
}

export function Correct({ entry, words, onWrite }: CorrectProps) {
	const [open, setOpen] = useState(false);
	const [reason, setReason] = useState("");
	const [missing, setMissing] = useState(false);
	const title = `Take back: ${words}`.slice(0, 120);
	const take = (...right: Writable[]) => {
		const text = reason.trim();
		if (text === "") return setMissing(true);
		onWrite([{ kind: "correction", body: { of: entry.id, text } }, ...right]);
		setOpen(false);
	};
	return (
		<>
			<Button variant="default" aria-label={title} onClick={() => setOpen(true)}>
				Take back
			</Button>
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title={title}
				size="lg"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<div className="stack">
					<form
						className="stack"
						onSubmit={(event) => {
							event.preventDefault();
							take();
						}}
					>
						<TextInput
							label="What is wrong with it?"
							value={reason}
							maxLength={500}
							data-autofocus
							error={missing && "Say first what is wrong with it"}
							onChange={(event) => {
								setReason(event.currentTarget.value);
								setMissing(false);
							}}
						/>
						<div>
							<Button type="submit">Take back</Button>
						</div>
					</form>
					<Right entry={entry} onRight={take} />
				</div>
			</Modal>
		</>
	);
}

/** What is entered in place of it. Of other kinds the right one is done anew where such things are done. */
function Right({ entry, onRight }: { entry: Entry; onRight: (right: Writable) => void }) {
	const [text, setText] = useState("");
	if (entry.kind === "reading") {
		const body = entry.body as ReadingEntry;
		return (
			<section className="stack" aria-label="What is right">
				<h2>Or take it back and enter what is right</h2>
				<ValueEntry
					unit={unitOf(body.what)}
					onValue={(value) => onRight({ kind: "reading", body: { ...body, value } })}
				/>
			</section>
		);
	}
	if (entry.kind !== "note") return null;
	const body = entry.body as { text: string; step?: string };
	return (
		<form
			className="stack"
			onSubmit={(event) => {
				event.preventDefault();
				if (text.trim() !== "") onRight({ kind: "note", body: { ...body, text: text.trim() } });
			}}
		>
			<h2>Or take it back and enter what is right</h2>
			<TextInput
				label="What it should say"
				value={text}
				maxLength={2000}
				onChange={(event) => setText(event.currentTarget.value)}
			/>
			<div>
				<Button type="submit" variant="default" disabled={text.trim() === ""}>
					Enter
				</Button>
			</div>
		</form>
	);
}
