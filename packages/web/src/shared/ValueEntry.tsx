/** Takes down what a meter shows: a number with its prefix, or open. */
import { Button, TextInput } from "@mantine/core";
import { useState } from "react";
import { Choice } from "./Choice.js";
import { parseShown } from "./parse-shown.js";
import { SCALES, type Scale, type Unit } from "./words.js";

interface ValueEntryProps {
	readonly unit: Unit;
	/** Volts, amperes or ohms; `open` where the meter shows open. */
	readonly onValue: (value: number | "open") => void;
}

export function ValueEntry({ unit, onValue }: ValueEntryProps) {
	const scales = plainFirst(SCALES[unit]);
	const [text, setText] = useState("");
	const [word, setWord] = useState(scales[0]!.word);
	const [wrong, setWrong] = useState("");
	const scale = SCALES[unit].find((s) => s.word === word)!;
	const take = () => {
		const parsed = parseShown(text);
		if (parsed === undefined) return setWrong("Write the number the meter shows, e.g. 12.4");
		setText("");
		onValue(parsed * scale.by);
	};
	return (
		<form
			className="value-entry"
			onSubmit={(event) => {
				event.preventDefault();
				take();
			}}
		>
			<TextInput
				label="The meter shows"
				inputMode="decimal"
				autoComplete="off"
				value={text}
				error={wrong || undefined}
				onChange={(event) => {
					setText(event.currentTarget.value);
					setWrong("");
				}}
			/>
			<Choice
				label="Unit"
				value={word}
				options={scales.map((s) => ({ value: s.word, label: s.word }))}
				onChange={setWord}
			/>
			<Button type="submit">Enter</Button>
			<Button variant="default" onClick={() => onValue("open")}>
				It shows open
			</Button>
		</form>
	);
}

/** The unit itself, then its prefixes. */
const plainFirst = (scales: readonly Scale[]): Scale[] =>
	[...scales].sort((a, b) => Math.abs(Math.log(a.by)) - Math.abs(Math.log(b.by)));
