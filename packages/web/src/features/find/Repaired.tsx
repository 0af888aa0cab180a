/** The end of a finding: this fault was it. Entered, it counts in the chances of the next cars. */
import type { RankedFault } from "@loomwright/engine";
import { Button, Modal, TextInput } from "@mantine/core";
import { useState } from "react";
import { useWriteEntry } from "../../server/hooks.js";
import { useKnown } from "../../server/known.js";
import { SavedState } from "../../shared/SavedState.js";

export function Repaired({ fault }: { readonly fault: RankedFault }) {
	const [open, setOpen] = useState(false);
	const entry = useWriteEntry();
	const { doneBy } = useKnown();
	const steps = [...new Set(fault.singles.flatMap((one) => one.steps))];
	const known = [...new Set(steps.flatMap((step) => doneBy[step] ?? []))];
	const [worked, setWorked] = useState<string>();
	const who = worked ?? (known.length === 1 ? known[0]! : "");
	const enter = () => {
		for (const { id, kind, where, steps: own } of fault.singles)
			entry.write({
				kind: "repair",
				body: { fault: id, kind, where, steps: own, worked: own.length > 0 ? who.trim() : "" },
			});
		setOpen(false);
	};
	return (
		<>
			<Button onClick={() => setOpen(true)}>This was it, and it is mended</Button>
			<SavedState entry={entry} />
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title="Found and mended"
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
					<ul className="bullets">
						{fault.singles.map(({ id, kind, where }) => (
							<li key={id}>
								{kind}: {where}
							</li>
						))}
					</ul>
					{steps.length === 0 ? (
						<p>No step of the recipe worked on it: it counts as an old fault.</p>
					) : (
						<>
							<p>
								{steps.length === 1 ? "Step" : "Steps"} {steps.join(", ")} of the recipe worked on it: it
								counts as new work.
							</p>
							<TextInput
								label="Who had done that; empty: not known"
								value={who}
								maxLength={100}
								onChange={(event) => setWorked(event.currentTarget.value)}
							/>
						</>
					)}
					<p className="soft">
						It goes into the job's history. From then on such faults are held for likelier on every car of
						this shop; whoever entered it can take it out again.
					</p>
					<Button type="submit">Enter the repair</Button>
				</form>
			</Modal>
		</>
	);
}
