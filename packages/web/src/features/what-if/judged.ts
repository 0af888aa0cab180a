/** What a change comes to, in a sentence, and what of the sizes it moves. */
import type { Supposition } from "../../engine/protocol.js";
import { amount, count } from "../../shared/words.js";

export type Tone = "stop" | "warn" | undefined;

export interface Line {
	readonly text: string;
	readonly tone: Tone;
}

/** The gravest of what it brings, in words. */
export function verdictOf(effects: Supposition): { readonly tone: Tone; readonly text: string } {
	const { findings, readings, misfits } = effects;
	const lines = sizeLines(effects);
	const come = (severity: string) => findings.come.filter((finding) => finding.severity === severity).length;
	const stops = come("stop");
	const worse = lines.filter(({ tone }) => tone === "stop").length;
	if (findings.come.length + findings.gone.length + readings.length + lines.length + misfits.length === 0)
		return { tone: undefined, text: "Nothing moves: no reading, no rule, no size." };
	const text = [
		stops > 0 && `${count(stops, "finding", "findings")} would say: do not cut or power up`,
		misfits.length > 0 &&
			`${count(misfits.length, "step of the recipe", "steps of the recipe")} would not fit`,
		worse > 0 && `${count(worse, "size", "sizes")} would no longer do`,
		come("warn") > 0 && `${count(come("warn"), "thing", "things")} would have to be mended`,
		come("note") > 0 && count(come("note"), "note comes", "notes come"),
		findings.gone.length > 0 && count(findings.gone.length, "finding goes", "findings go"),
		readings.length > 0 && count(readings.length, "reading moves", "readings move"),
	].filter((part) => part !== false);
	const tone = stops + misfits.length + worse > 0 ? "stop" : come("warn") > 0 ? "warn" : undefined;
	return { tone, text: text.length === 0 ? "Sizes move a little; all of them do." : `${text.join("; ")}.` };
}

/** What does no longer, what does now, and how far the others move. */
export function sizeLines({ sizes }: Supposition): Line[] {
	const lines: Line[] = [];
	for (const { id, before, after } of sizes.wires) {
		if (!before || !after) lines.push({ text: `Wire ${id} ${after ? "comes" : "goes"}.`, tone: undefined });
		else if (before.suffices !== after.suffices)
			lines.push({
				text: `Wire ${id}, ${after.mm2} mm², ${after.suffices ? "does now" : "no longer does"}; ${after.needed ? `${after.needed.mm2} mm² would` : "no size on the shelf does"}.`,
				tone: after.suffices ? undefined : "stop",
			});
		else if (Math.abs(after.volts - before.volts) >= LEAST_VOLTS)
			lines.push({
				text: `Wire ${id} loses ${amount(after.volts, "V")}, before ${amount(before.volts, "V")}.`,
				tone: undefined,
			});
	}
	for (const { id, before, after } of sizes.fuses)
		for (const fault of after?.faults ?? [])
			if (!before?.faults.includes(fault)) lines.push({ text: `Fuse ${id} ${fault}.`, tone: "stop" });
	for (const { id, before, after } of sizes.loads) {
		if (before && !after) lines.push({ text: `${id} no longer works.`, tone: "stop" });
		else if (!before && after) lines.push({ text: `${id} works now.`, tone: undefined });
		else if (before && after && before.suffices !== after.suffices)
			lines.push({
				text: `${id} ${after.suffices ? "gets its volts now" : "no longer gets its volts"}.`,
				tone: after.suffices ? undefined : "stop",
			});
	}
	if (sizes.splices.length > 0)
		lines.push({
			text: `Other barrel, sleeve or wires: ${sizes.splices.map(({ id }) => id).join(", ")}.`,
			tone: undefined,
		});
	return lines;
}

/** What a meter shows of a wire's loss. */
const LEAST_VOLTS = 0.01;
