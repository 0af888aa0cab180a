/** The ways to add what was seen, each with its own form. */
import type { Which } from "@loomwright/engine";
import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { Act } from "./acts.js";
import { BenchForm } from "./forms/BenchForm.js";
import { CodesForm } from "./forms/CodesForm.js";
import { FunctionForm } from "./forms/FunctionForm.js";
import { ReadingForm } from "./forms/ReadingForm.js";
import { ReseatedForm } from "./forms/ReseatedForm.js";

export interface ActFormProps {
	readonly which: Which;
	readonly onAct: (act: Act) => void;
}

const FORMS: readonly {
	readonly name: string;
	readonly title: string;
	readonly Form: (props: ActFormProps) => React.ReactNode;
}[] = [
	{ name: "Trouble codes", title: "Trouble codes read out", Form: CodesForm },
	{ name: "Works or not", title: "What works and what does not", Form: FunctionForm },
	{ name: "A reading", title: "A reading that was taken", Form: ReadingForm },
	{ name: "A bench test", title: "A part tested by itself", Form: BenchForm },
	{ name: "Reseated", title: "A connector or relay taken off and put back", Form: ReseatedForm },
];

export function AddAct({ which, onAct }: ActFormProps) {
	const [open, setOpen] = useState<(typeof FORMS)[number]>();
	return (
		<>
			<div className="add-acts">
				{FORMS.map((form) => (
					<Button key={form.name} variant="default" onClick={() => setOpen(form)}>
						{form.name}
					</Button>
				))}
			</div>
			<Modal
				opened={open !== undefined}
				onClose={() => setOpen(undefined)}
				title={open?.title}
				size="xl"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				{open && (
					<open.Form
						which={which}
						onAct={(act) => {
							onAct(act);
							setOpen(undefined);
						}}
					/>
				)}
			</Modal>
		</>
	);
}
