/** One of a few, as large buttons that wrap. */
import { Radio } from "@mantine/core";

interface ChoiceProps<T extends string> {
	readonly label: string;
	readonly value: T;
	readonly options: readonly { readonly value: T; readonly label: string }[];
	readonly onChange: (value: T) => void;
}

export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
	return (
		<Radio.Group size="lg" label={label} value={value} onChange={(chosen) => onChange(chosen as T)}>
			<div className="choice">
				{options.map((option) => (
					<Radio.Card key={option.value} value={option.value} className="choice-card">
						{option.label}
					</Radio.Card>
				))}
			</div>
		</Radio.Group>
	);
}
