/** A contact or joint, typed or picked: what a new part brings may not be in the loom yet. */
import { TextInput } from "@mantine/core";
import { PointPicker } from "../../../shared/PointPicker.js";

interface EndFieldProps {
	readonly label: string;
	readonly value: string;
	readonly onChange: (value: string) => void;
}

export const EndField = ({ label, value, onChange }: EndFieldProps) => (
	<div className="form-grid">
		<TextInput
			label={label}
			placeholder="contact, e.g. S-REV.2"
			autoComplete="off"
			value={value}
			onChange={(event) => onChange(event.currentTarget.value)}
		/>
		<PointPicker which="converted" label={`${label}: pick it`} value="" onPick={onChange} />
	</div>
);
