/** Takes down what a meter shows on keys that a gloved finger hits; a keyboard works too. */
import { Button, TextInput, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { Choice } from "../../shared/Choice.js";
import { parseShown } from "../../shared/parse-shown.js";
import { SCALES, scaleOf } from "../../shared/words.js";
import type { Band, Shown } from "./band.js";
import { typed } from "./typed.js";

interface MeterPadProps {
	readonly band: Band;
	readonly onShown: (shown: Shown) => void;
}

export function MeterPad({ band: { unit, value, high }, onShown }: MeterPadProps) {
	const [text, setText] = useState("");
	// A poor contact reads ohms where next to none are wanted, so nothing smaller than the unit comes first.
	const [word, setWord] = useState(() => scaleOf(Math.max(1, Math.abs(value ?? high ?? 1)), unit).word);
	const [wrong, setWrong] = useState("");
	const ohms = unit === "ohm";
	const put = (next: string) => {
		setText(next);
		setWrong("");
	};
	const take = () => {
		const parsed = parseShown(text);
		if (parsed === undefined || (ohms && parsed < 0)) return setWrong("Put in the number the meter shows");
		onShown(parsed * SCALES[unit].find((scale) => scale.word === word)!.by);
	};
	return (
		<form
			className="pad stack"
			onSubmit={(event) => {
				event.preventDefault();
				take();
			}}
		>
			<TextInput
				className="pad-shown"
				label={`The meter shows, in ${word}`}
				// The keys below are larger than the tablet's own.
				inputMode="none"
				autoComplete="off"
				value={text}
				error={wrong || undefined}
				onChange={(event) => put(event.currentTarget.value)}
			/>
			<Choice
				label="Unit"
				value={word}
				options={[...SCALES[unit]].reverse().map((scale) => ({ value: scale.word, label: scale.word }))}
				onChange={setWord}
			/>
			<div className="pad-keys">
				{["7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "⌫"].map((key) => (
					<UnstyledButton
						key={key}
						className="pad-key"
						aria-label={key === "⌫" ? "Take the last figure away" : key === "." ? "Point" : key}
						onClick={() => put(typed(text, key))}
					>
						{key}
					</UnstyledButton>
				))}
			</div>
			<div className="pad-ends">
				{ohms ? (
					<Button variant="default" size="xl" onClick={() => onShown("open")}>
						It shows open
					</Button>
				) : (
					<Button variant="default" size="xl" aria-label="Minus" onClick={() => put(typed(text, "±"))}>
						±
					</Button>
				)}
				<Button type="submit" size="xl">
					Enter
				</Button>
			</div>
		</form>
	);
}
