/** Practice cases that come with the car: opened, then shown one act at a time. */
import { Button, Modal, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { usePractice } from "../../server/hooks.js";
import type { Practice as PracticeCase } from "../../server/types.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { actsOf } from "./acts.js";
import type { Case } from "./use-case.js";

export function Practice({ shown }: { shown: Case }) {
	const [open, setOpen] = useState(false);
	return (
		<>
			<Button variant="default" onClick={() => setOpen(true)}>
				Practice cases
			</Button>
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title="Practice cases"
				size="lg"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<PracticeList shown={shown} done={() => setOpen(false)} />
			</Modal>
		</>
	);
}

function PracticeList({ shown, done }: { shown: Case; done: () => void }) {
	const { engine } = useCar();
	const practice = usePractice();
	const [fault, setFault] = useState<Error>();
	if (practice.error)
		return (
			<FaultNotice
				title="The cases cannot be fetched"
				error={practice.error}
				again={() => practice.refetch()}
			/>
		);
	if (!practice.data) return <Working what="Fetching the cases" />;
	const begin = async ({ text, file, title }: PracticeCase) => {
		try {
			const evidence = await engine.call("evidence", text, file);
			shown.begin(title, evidence.of, actsOf(evidence));
			done();
		} catch (error) {
			setFault(error as Error);
		}
	};
	return (
		<div className="stack">
			<p className="soft">Nothing of a practice case goes into the job's history.</p>
			{fault && <FaultNotice title="This case cannot be read" error={fault} />}
			{practice.data.length === 0 && <p>This car comes without practice cases.</p>}
			<ul className="row-list">
				{practice.data.map((item) => (
					<li key={item.file}>
						<UnstyledButton className="row" onClick={() => begin(item)}>
							<strong>{item.title}</strong>
						</UnstyledButton>
					</li>
				))}
			</ul>
		</div>
	);
}
