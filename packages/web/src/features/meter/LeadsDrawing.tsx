/** The way between the two leads, drawn when asked for. */
import type { Question, Which } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import { useWayBetween } from "../../engine/hooks.js";

export function LeadsDrawing({ question: { from, to, when }, which }: { question: Question; which: Which }) {
	const [open, setOpen] = useState(false);
	const way = useWayBetween(which, open ? from : "", open ? to : "");
	const { conditions } = useCar().car[which];
	const leads = new Map([
		[from.replace(/!pin$/, ""), "1"],
		[to.replace(/!pin$/, ""), "2"],
	]);
	return (
		<>
			<Button variant="default" onClick={() => setOpen(!open)}>
				{open ? "Close the drawing" : "Show where the leads go"}
			</Button>
			{open && way.data && (
				<Drawing which={which} path={way.data} when={conditions.has(when) ? when : ""} leads={leads} />
			)}
		</>
	);
}
