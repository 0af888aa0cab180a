/** How the car stood, in words: a listed condition by its title, one said in place by what is off, out or set. */
import type { Loom } from "../loom/index.js";

/** Parts named one by one; more are counted. */
const NAMED = 3;

const STATES: Readonly<Record<string, string>> = { unmated: "off", pulled: "out" };
const KINDS: Readonly<Record<string, string>> = { connector: "plugs", fuse: "fuses", relay: "relays" };

/** `all plugs on`; of `BAT=off; X1=unmated`, `BAT off; X1 off`. What is known by no title is told as it is. */
export function conditionWords(loom: Loom, when: string): string {
	const listed = loom.conditions.get(when);
	if (listed || !when.includes("=")) return listed?.title || when;
	const said: string[] = [];
	const states = new Map<string, string>();
	for (const setting of when.split(";").map((text) => text.trim())) {
		const at = setting.indexOf("=");
		if (at < 0) {
			said.push(conditionWords(loom, setting));
			continue;
		}
		states.set(setting.slice(0, at), setting.slice(at + 1));
	}
	const groups = new Map<string, string[]>();
	for (const [subject, state] of states) {
		const key = `${loom.parts.get(subject)?.kind ?? ""}=${state}`;
		groups.set(key, [...(groups.get(key) ?? []), subject]);
	}
	for (const [key, subjects] of groups) {
		const [kind = "", state = ""] = key.split("=");
		const what =
			subjects.length <= NAMED ? subjects.join(", ") : `${subjects.length} ${KINDS[kind] ?? "parts"}`;
		said.push(`${what} ${STATES[state] ?? state}`);
	}
	return said.join("; ");
}
