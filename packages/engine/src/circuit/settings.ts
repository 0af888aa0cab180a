/** The settings of a condition: a listed one, or one said in place. */
import { stateFault } from "../devices/index.js";
import type { Loom } from "../loom/index.js";
import { didYouMean } from "../tables/index.js";

/**
 * Settings by part, connector or contact, those of the conditions it is like included.
 *
 * A condition may be said in place: a listed one, changed, as `battery-off; X1=unmated; S1=pressed`, or one from
 * nothing, as `BAT=off; X1=unmated`. What is not set stands in its kind's default.
 *
 * @throws RangeError naming what is known where there is no such condition, subject or state
 */
export function settingsOf(loom: Loom, condition: string): ReadonlyMap<string, string> {
	const known = loom.conditions.get(condition);
	if (known) return withBase(loom, known.like, known.settings);
	const [first = "", ...rest] = condition.split(";").map((word) => word.trim());
	if (rest.length === 0 && !first.includes("=")) throw unknownCondition(loom, condition);
	const said = (first.includes("=") ? [first, ...rest] : rest).map((words) =>
		setting(loom, condition, words),
	);
	return withBase(loom, first.includes("=") ? "" : first, said);
}

/**
 * The same the other way: settings said in place, in the order given.
 * @param base a listed condition that they change; empty for none
 */
export function conditionOf(settings: Iterable<readonly [string, string]>, base = ""): string {
	const said = [...settings].map(([subject, state]) => `${subject}=${state}`);
	return (base === "" ? said : [base, ...said]).join("; ");
}

function withBase(
	loom: Loom,
	like: string,
	own: Iterable<readonly [string, string]>,
): ReadonlyMap<string, string> {
	if (like === "") return new Map(own);
	if (!loom.conditions.has(like)) throw unknownCondition(loom, like);
	return new Map([...settingsOf(loom, like), ...own]);
}

function unknownCondition(loom: Loom, condition: string): RangeError {
	const known = [...loom.conditions.keys()].join(", ");
	return new RangeError(`no condition '${condition}'; this car has: ${known}`);
}

function setting(loom: Loom, condition: string, words: string): readonly [string, string] {
	const at = words.indexOf("=");
	const subject = words.slice(0, at).trim();
	const state = words.slice(at + 1).trim();
	const said = `condition '${condition}'`;
	if (at < 1) throw new RangeError(`${said}: '${words}' is no setting; SUBJECT=STATE is`);
	if (!loom.parts.has(subject) && !loom.contacts.has(subject)) {
		const wanted = didYouMean(subject, [...loom.parts.keys(), ...loom.contacts.keys()], "a part or contact");
		throw new RangeError(`${said}: no '${subject}' in this car; ${wanted}`);
	}
	const wrong = stateFault(loom, subject, state);
	if (wrong) throw new RangeError(`${said}: '${state}' is no state of ${subject}; ${wrong}`);
	return [subject, state];
}
