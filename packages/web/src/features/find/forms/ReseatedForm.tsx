/** A connector, relay or fuse taken off and put back: what is seen after it counts as a new occasion. */
import { Button } from "@mantine/core";
import { useCar } from "../../../app/car.js";
import type { ActFormProps } from "../AddAct.js";
import { PartList } from "./PartList.js";

const KINDS = new Set(["connector", "relay", "fuse"]);

export function ReseatedForm({ which, onAct }: ActFormProps) {
	const parts = [...useCar().car[which].parts.values()];
	return (
		<PartList
			parts={parts.filter(({ kind, marks }) => KINDS.has(kind) && !marks.includes("pyrotechnic"))}
			buttons={({ id }) => (
				<Button
					variant="default"
					aria-label={`${id} was reseated`}
					onClick={() => onAct({ kind: "reseated", body: { what: id } })}
				>
					Reseated
				</Button>
			)}
		/>
	);
}
