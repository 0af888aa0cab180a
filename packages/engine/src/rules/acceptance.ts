/**
 * Whether a person's acceptance of a finding still speaks of what the rules find now. It covers a finding only as
 * it was: the same words and values, and the same rows of the loom along its path.
 */
import type { Loom, WireEnd } from "../loom/index.js";
import type { Finding } from "./types.js";

/** A finding together with what it rests on. */
export interface Grounded {
	/** `converted` or `delivered`: the loom it was found in. */
	readonly of: string;
	readonly finding: Finding;
	/** What stands along its path, a line each. */
	readonly grounds: readonly string[];
}

/** What a finding rests on: each wire, part, contact and joint of its path as the loom has it. Cost O(path). */
export function groundsOf(loom: Loom, { path }: Finding): string[] {
	return path.map((id) => `${id}: ${rowOf(loom, id)}`);
}

function rowOf(loom: Loom, id: string): string {
	const wire = loom.wires.get(id);
	if (wire) {
		const { from, to, mm2, colours, metres, pair, bundle, marks } = wire;
		const twisted = pair === "" ? "" : `twisted in ${pair}`;
		const size = `${mm2} mm2 ${colours.join("")}, ${metres} m`;
		return words([`${endOf(from)} to ${endOf(to)}`, size, twisted, bundle, ...marks]);
	}
	const part = loom.parts.get(id);
	if (part) {
		const positions = part.positions.map(
			({ name, joins }) => `${name}: ${joins.map((pair) => pair.join("-")).join(" ")}`,
		);
		return words([part.kind, part.duty, ...valuesOf(part.values), ...positions, ...part.marks]);
	}
	const contact = loom.contacts.get(id);
	if (contact) {
		const at = contact.connector === "" ? "" : `${contact.connector} cavity ${contact.cavity}`;
		return words([contact.role, at, ...valuesOf(contact.values)]);
	}
	const joint = loom.joints.get(id);
	if (!joint) return "not in this loom";
	const ohms = joint.ohms === undefined ? "" : `${joint.ohms} ohm`;
	return words([joint.kind, joint.place, joint.metal, ohms, ...joint.marks]);
}

const words = (all: readonly string[]): string => all.filter((word) => word !== "").join(", ");

const valuesOf = (values: Readonly<Record<string, number>>): string[] =>
	Object.entries(values).map(([name, value]) => `${name} ${value}`);

function endOf(end: WireEnd): string {
	if (end.at === "contact") return end.contact;
	if (end.at === "joint") return end.joint;
	return end.insulated ? "stowed" : "loose";
}

/** What is found now, beside an acceptance of it as it was. */
export interface Covering<A extends Grounded> {
	readonly acceptance: A;
	/** What is other than it was, a line each; empty: the acceptance covers the finding. */
	readonly changed: readonly string[];
}

/**
 * Acceptances of each finding, and those of which nothing is found any more.
 * @param findings all that is found now; the answer has one list for each, in their order
 */
export function matchAcceptances<A extends Grounded>(
	findings: readonly Grounded[],
	acceptances: readonly A[],
): { readonly byFinding: readonly (readonly Covering<A>[])[]; readonly gone: readonly A[] } {
	const byFinding = findings.map((): Covering<A>[] => []);
	const gone: A[] = [];
	for (const acceptance of acceptances) {
		const differences = findings.map((finding) => changedSince(acceptance, finding));
		const exact = differences.findIndex((changed) => changed?.length === 0);
		const at = exact >= 0 ? exact : nearest(findings, differences, acceptance);
		if (at < 0) gone.push(acceptance);
		else byFinding[at]!.push({ acceptance, changed: differences[at]! });
	}
	return { byFinding, gone };
}

/** The finding of the same rule that says the same place, else the one with most of the path in common. */
function nearest(
	findings: readonly Grounded[],
	differences: readonly (readonly string[] | undefined)[],
	{ finding: { where, path } }: Grounded,
): number {
	const own = new Set(path);
	const likeness = findings.map(({ finding }, k) => {
		if (differences[k] === undefined) return 0;
		if (finding.where === where) return Number.POSITIVE_INFINITY;
		return finding.path.filter((id) => own.has(id)).length;
	});
	const most = Math.max(0, ...likeness);
	return most === 0 ? -1 : likeness.indexOf(most);
}

/** What is other than it was when accepted; undefined: another rule, or the other loom. */
function changedSince(was: Grounded, now: Grounded): string[] | undefined {
	if (was.of !== now.of || was.finding.rule !== now.finding.rule) return undefined;
	const texts = (["severity", "where", "why", "mend"] as const).flatMap((key) =>
		was.finding[key] === now.finding[key] ? [] : [`${NAMES[key]} was: ${was.finding[key]}`],
	);
	const before = new Set([...was.grounds, ...was.finding.cautions]);
	const after = new Set([...now.grounds, ...now.finding.cautions]);
	return [
		...texts,
		...[...before].filter((line) => !after.has(line)).map((line) => `no longer: ${line}`),
		...[...after].filter((line) => !before.has(line)).map((line) => `new: ${line}`),
	];
}

const NAMES = { severity: "Severity", where: "Place", why: "Reason", mend: "What mends it" } as const;
