/** Which of the two looms is looked at. */
import type { Which } from "@loomwright/engine";
import { SegmentedControl } from "@mantine/core";

interface LoomChoiceProps {
	readonly value: Which;
	readonly onChange: (which: Which) => void;
}

const DATA = [
	{ value: "delivered", label: "As delivered" },
	{ value: "converted", label: "As converted" },
];

export const LoomChoice = ({ value, onChange }: LoomChoiceProps) => (
	<SegmentedControl
		aria-label="Which loom"
		data={DATA}
		value={value}
		onChange={(which) => onChange(which as Which)}
	/>
);
