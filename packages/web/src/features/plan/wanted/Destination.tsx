/** Where a circuit must lead: a contact or joint, a ground, a feed, or what a function of the car needs. */
import { NativeSelect } from "@mantine/core";
import { useCar } from "../../../app/car.js";
import { EndField } from "./EndField.js";

interface DestinationProps {
	readonly value: string;
	readonly onChange: (value: string) => void;
}

const POINT = "a contact or joint";
const FUNCTION = "function ";
const RAILS = [
	{ value: "ground", label: "any ground point" },
	{ value: "body ground", label: "a ground point on the body" },
	{ value: "engine ground", label: "a ground point on the engine" },
	{ value: "switched feed", label: "a fused feed that is live with the key" },
	{ value: "permanent feed", label: "a fused feed that is always live" },
];

export function Destination({ value, onChange }: DestinationProps) {
	const { functions } = useCar().car.converted;
	const titles = new Map(functions.map((row) => [row.function, row.title || row.function]));
	const way = value.startsWith(FUNCTION)
		? FUNCTION
		: RAILS.some((rail) => rail.value === value)
			? value
			: POINT;
	return (
		<div className="stack">
			<div className="form-grid">
				<NativeSelect
					label="It must lead to"
					value={way}
					data={[
						{ value: POINT, label: POINT },
						...RAILS,
						{ value: FUNCTION, label: "what a function of the car needs" },
					]}
					onChange={(event) => {
						const chosen = event.currentTarget.value;
						const [first = ""] = titles.keys();
						onChange(chosen === POINT ? "" : chosen === FUNCTION ? FUNCTION + first : chosen);
					}}
				/>
				{way === FUNCTION && (
					<NativeSelect
						label="Which function"
						value={value.slice(FUNCTION.length)}
						data={[...titles].map(([name, title]) => ({ value: name, label: title }))}
						onChange={(event) => onChange(FUNCTION + event.currentTarget.value)}
					/>
				)}
			</div>
			{way === POINT && <EndField label="To" value={value} onChange={onChange} />}
		</div>
	);
}
