/** Trouble codes, tapped from the list of the car's own; and which units answered at all. */
import { Button, Checkbox, TextInput } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../../app/car.js";
import { count } from "../../../shared/words.js";
import type { ActFormProps } from "../AddAct.js";
import { searchCodes, unitCodes } from "./codes.js";

const toggled = (set: ReadonlySet<string>, name: string): Set<string> => {
	const next = new Set(set);
	if (!next.delete(name)) next.add(name);
	return next;
};

export function CodesForm({ which, onAct }: ActFormProps) {
	const units = unitCodes(useCar().car[which]);
	const [text, setText] = useState("");
	const [stored, setStored] = useState<ReadonlySet<string>>(new Set());
	const [silent, setSilent] = useState<ReadonlySet<string>>(new Set());
	const answered = units.map(({ unit }) => unit).filter((unit) => !silent.has(unit));
	const enter = () =>
		onAct({ kind: "codes", body: { codes: [...stored], units: silent.size === 0 ? [] : answered } });
	return (
		<div className="stack">
			<TextInput
				data-autofocus
				label="Search"
				placeholder="code, unit or words"
				value={text}
				onChange={(event) => setText(event.currentTarget.value)}
			/>
			<div className="form-list">
				{searchCodes(units, text).map(({ unit, label, codes }) => (
					<fieldset key={unit} className="plain-set">
						<legend>
							<strong>{unit}</strong> {label}
						</legend>
						{codes.map(({ code, title }) => (
							<Checkbox
								key={code}
								size="lg"
								className="tall"
								checked={stored.has(code)}
								onChange={() => setStored(toggled(stored, code))}
								label={
									<>
										<span className="mono">{code}</span> {title}
									</>
								}
							/>
						))}
					</fieldset>
				))}
			</div>
			<fieldset className="plain-set">
				<legend>
					<strong>Units that did not answer</strong>
				</legend>
				{units.map(({ unit, label }) => (
					<Checkbox
						key={unit}
						size="lg"
						className="tall"
						checked={silent.has(unit)}
						onChange={() => setSilent(toggled(silent, unit))}
						label={`${unit} ${label}`}
					/>
				))}
			</fieldset>
			<div className="form-end">
				<Button onClick={enter}>
					{stored.size === 0 ? "Enter: no codes stored" : `Enter ${count(stored.size, "code")}`}
				</Button>
			</div>
		</div>
	);
}
