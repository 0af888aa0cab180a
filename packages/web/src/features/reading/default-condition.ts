/** The condition a reading begins with, where the person has not chosen one. */
import type { Loom, What } from "@loomwright/engine";

/** For ohms the first with the battery off; else the one in which most of the car's monitors look. */
export function defaultCondition(loom: Loom, what: What): string {
	const names = [...loom.conditions.keys()];
	const off = names.find((name) => batteryOff(loom, name));
	if (what === "ohms" && off !== undefined) return off;
	const counts = new Map<string, number>();
	for (const { when } of loom.monitors) counts.set(when, (counts.get(when) ?? 0) + 1);
	const most = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
	return most ?? names.find((name) => name !== off) ?? off ?? "";
}

/** Set off by the condition itself or by one it is like. */
function batteryOff(loom: Loom, name: string): boolean {
	const condition = loom.conditions.get(name);
	if (!condition) return false;
	const own = [...condition.settings].find(([subject]) => loom.parts.get(subject)?.kind === "battery");
	return own ? own[1] === "off" : condition.like !== "" && batteryOff(loom, condition.like);
}
