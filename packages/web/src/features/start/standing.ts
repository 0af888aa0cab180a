/** What stands at each stage of the line, in a few words. */

import { useCar } from "../../app/car.js";
import type { LineStage } from "../../app/line.js";
import { useChanges, useFindings } from "../../engine/hooks.js";
import { useEntries } from "../../server/hooks.js";
import { count } from "../../shared/words.js";
import { useAcceptances } from "../checks/use-acceptances.js";
import { useSheetWork } from "../prove/use-sheet-work.js";

export function useStanding(): Readonly<Record<LineStage["stage"], string>> {
	const { car, recipe } = useCar();
	const changes = useChanges().data;
	const findings = useFindings("converted").data;
	const entries = useEntries().data;
	const done = Object.keys(useSheetWork().taken).length;
	const misfits = car.misfits.length;
	const { found } = useAcceptances("converted");
	const open = found.filter(({ accepted }) => !accepted);
	const stops = open.filter(({ grounded }) => grounded.finding.severity === "stop").length;
	const accepted = found.length > open.length ? `, ${found.length - open.length} accepted` : "";
	return {
		plan: recipe.version > 1 ? `recipe version ${recipe.version}` : "",
		changes:
			misfits > 0
				? count(misfits, "step does not fit", "steps do not fit")
				: changes
					? count(changes.length, "difference")
					: "",
		checks: findings
			? `${count(findings.length, "finding")}${accepted}, ${stops || "none"} to stop for`
			: "checking …",
		reading: "",
		prove: done > 0 ? count(done, "reading") : "",
		power: "",
		find: entries && entries.length > 0 ? count(entries.length, "entry", "entries") : "",
	};
}
