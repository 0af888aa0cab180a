/** Leaves a row out, with a reason that goes into the history. */
import { Button } from "@mantine/core";
import { useState } from "react";

const REASONS = ["the car's maker forbids it", "it cannot be reached", "it is not on this car"] as const;

export function LeaveOut({ onReason }: { onReason: (reason: string) => void }) {
	const [open, setOpen] = useState(false);
	if (!open)
		return (
			<Button variant="default" onClick={() => setOpen(true)}>
				Leave it out
			</Button>
		);
	return (
		<fieldset className="panel stack" aria-label="Why it is left out">
			<p>Why? What only this row would show is then not proved.</p>
			<div className="choice">
				{REASONS.map((reason) => (
					<Button
						key={reason}
						variant="default"
						onClick={() => {
							setOpen(false);
							onReason(reason);
						}}
					>
						{`${reason.charAt(0).toUpperCase()}${reason.slice(1)}`}
					</Button>
				))}
				<Button variant="default" onClick={() => setOpen(false)}>
					Do not leave it out
				</Button>
			</div>
		</fieldset>
	);
}
