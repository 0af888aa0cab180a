/** A button that asks for a reason before it acts. */
import { Button, Modal, TextInput } from "@mantine/core";
import { useState } from "react";

interface AskWhyProps {
	readonly button: string;
	/** What it is about, for who cannot see the button's place. */
	readonly label: string;
	readonly question: string;
	readonly onReason: (reason: string) => void;
}

export function AskWhy({ button, label, question, onReason }: AskWhyProps) {
	const [open, setOpen] = useState(false);
	const [reason, setReason] = useState("");
	const enter = () => {
		if (reason.trim() === "") return;
		onReason(reason.trim());
		setReason("");
		setOpen(false);
	};
	return (
		<>
			<Button variant="default" aria-label={label} onClick={() => setOpen(true)}>
				{button}
			</Button>
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title={label}
				size="lg"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<form
					className="stack"
					onSubmit={(event) => {
						event.preventDefault();
						enter();
					}}
				>
					<TextInput
						label={question}
						value={reason}
						maxLength={500}
						data-autofocus
						onChange={(event) => setReason(event.currentTarget.value)}
					/>
					<Button type="submit" disabled={reason.trim() === ""}>
						{button}
					</Button>
				</form>
			</Modal>
		</>
	);
}
