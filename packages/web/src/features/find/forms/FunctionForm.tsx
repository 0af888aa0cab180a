/** What of the car works and what does not. */
import { Button } from "@mantine/core";
import { useCar } from "../../../app/car.js";
import type { ActFormProps } from "../AddAct.js";
import { titleOf } from "../act-words.js";

export function FunctionForm({ which, onAct }: ActFormProps) {
	const loom = useCar().car[which];
	const names = [...new Set(loom.functions.map((row) => row.function))];
	const enter = (name: string, holds: boolean) =>
		onAct({ kind: "function", body: { function: name, holds } });
	return (
		<ul className="row-list">
			{names.map((name) => (
				<li key={name} className="row form-row">
					<span className="row-main">
						<strong className="cap">{titleOf(loom, name)}</strong>
						<span className="soft">{name}</span>
					</span>
					<Button
						variant="default"
						aria-label={`${titleOf(loom, name)}: works`}
						onClick={() => enter(name, true)}
					>
						Works
					</Button>
					<Button
						variant="default"
						aria-label={`${titleOf(loom, name)}: does not`}
						onClick={() => enter(name, false)}
					>
						Does not
					</Button>
				</li>
			))}
		</ul>
	);
}
