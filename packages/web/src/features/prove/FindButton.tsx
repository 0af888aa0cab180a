/** Hands all that was read to finding, and goes there. */
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { go } from "../../app/route.js";
import type { Act } from "../find/acts.js";
import { type Proving, useCase } from "../find/use-case.js";

interface FindButtonProps {
	readonly acts: readonly Act[];
	readonly proving: Proving;
}

export function FindButton({ acts, proving }: FindButtonProps) {
	const { job } = useCar();
	const shown = useCase();
	const other = shown.acts.length > 0 && shown.proving === undefined;
	return (
		<div>
			<Button
				size="xl"
				onClick={() => {
					shown.prove(acts, proving);
					go({ job: job.id, stage: "find" });
				}}
			>
				Find the cause
			</Button>
			{other && <p className="soft">What stands under Find now gives way to these readings.</p>}
		</div>
	);
}
