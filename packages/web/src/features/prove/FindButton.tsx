/** Hands all that was read to finding, and goes there. */
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { go } from "../../app/route.js";
import type { Act } from "../find/acts.js";
import { useCase } from "../find/use-case.js";

export function FindButton({ acts }: { acts: readonly Act[] }) {
	const { job } = useCar();
	const shown = useCase();
	const other = shown.acts.length > 0 && !shown.proving;
	return (
		<div>
			<Button
				size="xl"
				onClick={() => {
					shown.prove(acts);
					go({ job: job.id, stage: "find" });
				}}
			>
				Find the cause
			</Button>
			{other && <p className="soft">What stands under Find now gives way to these readings.</p>}
		</div>
	);
}
