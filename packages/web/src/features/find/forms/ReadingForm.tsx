/** A reading taken of one's own choice. */
import type { What } from "@loomwright/engine";
import { useState } from "react";
import { useCar } from "../../../app/car.js";
import { ConditionChoice } from "../../../drawing/view/ConditionChoice.js";
import { Choice } from "../../../shared/Choice.js";
import { PointPicker } from "../../../shared/PointPicker.js";
import { ValueEntry } from "../../../shared/ValueEntry.js";
import { defaultCondition } from "../../reading/default-condition.js";
import { unitOf, WHATS } from "../../reading/whats.js";
import type { ActFormProps } from "../AddAct.js";

export function ReadingForm({ which, onAct }: ActFormProps) {
	const loom = useCar().car[which];
	const [from, setFrom] = useState("");
	const [to, setTo] = useState("");
	const [what, setWhat] = useState<What>("volts");
	const [chosen, setWhen] = useState("");
	const when = chosen || defaultCondition(loom, what);
	return (
		<div className="stack">
			<PointPicker which={which} label="Lead 1, red" value={from} onPick={setFrom} />
			<PointPicker which={which} label="Lead 2, black" value={to} onPick={setTo} />
			<Choice<What> label="What the meter was set to" value={what} options={WHATS} onChange={setWhat} />
			<ConditionChoice which={which} value={when} onChange={setWhen} label="How the car stood" />
			{from && to ? (
				<ValueEntry
					key={what}
					unit={unitOf(what)}
					onValue={(value) => onAct({ kind: "reading", body: { what, from, to, when, value } })}
				/>
			) : (
				<p className="soft">Choose both points, then the value can be entered.</p>
			)}
		</div>
	);
}
