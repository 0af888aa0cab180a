/** How the car stands: one of the car's own conditions. */
import type { Which } from "@loomwright/engine";
import { NativeSelect } from "@mantine/core";
import { useCar } from "../../app/car.js";

interface ConditionChoiceProps {
	readonly which: Which;
	/** Condition id; empty for at rest, where that may be chosen. */
	readonly value: string;
	readonly onChange: (condition: string) => void;
	readonly label: string;
	readonly atRest?: boolean;
}

export function ConditionChoice({ which, value, onChange, label, atRest = false }: ConditionChoiceProps) {
	const { conditions } = useCar().car[which];
	const data = [...conditions.values()].map(({ id, title }) => ({ value: id, label: title || id }));
	return (
		<NativeSelect
			className="condition-choice"
			label={label}
			value={value}
			data={atRest ? [{ value: "", label: "at rest, nothing switched" }, ...data] : data}
			onChange={(event) => onChange(event.currentTarget.value)}
		/>
	);
}
