/** Narrows a list by words and by place on the car. */
import { NativeSelect, TextInput } from "@mantine/core";

interface FilterBarProps {
	readonly text: string;
	readonly onText: (text: string) => void;
	readonly place: string;
	readonly places: readonly string[];
	readonly onPlace: (place: string) => void;
}

export const FilterBar = ({ text, onText, place, places, onPlace }: FilterBarProps) => (
	<div className="filter">
		<TextInput
			aria-label="Search the changes"
			placeholder="Search connector, wire or words"
			value={text}
			onChange={(event) => onText(event.currentTarget.value)}
		/>
		<NativeSelect
			aria-label="Place on the car"
			value={place}
			data={[{ value: "", label: "Everywhere on the car" }, ...places]}
			onChange={(event) => onPlace(event.currentTarget.value)}
		/>
	</div>
);
