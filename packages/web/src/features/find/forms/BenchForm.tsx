/** A part taken off the car and tested by itself. */
import { Button } from "@mantine/core";
import { useCar } from "../../../app/car.js";
import type { ActFormProps } from "../AddAct.js";
import { PartList } from "./PartList.js";

export function BenchForm({ which, onAct }: ActFormProps) {
	const parts = [...useCar().car[which].parts.values()];
	const tested = parts.filter(({ kind, marks }) => kind !== "connector" && !marks.includes("pyrotechnic"));
	const enter = (part: string, good: boolean) => onAct({ kind: "bench", body: { part, good } });
	return (
		<PartList
			parts={tested}
			buttons={({ id }) => (
				<>
					<Button variant="default" aria-label={`${id} is good`} onClick={() => enter(id, true)}>
						Good
					</Button>
					<Button variant="default" aria-label={`${id} is bad`} onClick={() => enter(id, false)}>
						Bad
					</Button>
				</>
			)}
		/>
	);
}
