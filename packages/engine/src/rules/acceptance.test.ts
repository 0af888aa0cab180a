import fc from "fast-check";
import { expect, test } from "vitest";
import type { Loom } from "../loom/index.js";
import { type Grounded, groundsOf, matchAcceptances } from "./acceptance.js";
import { idleFuse } from "./idle-fuse.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

/** A fuse with an old wire behind it and no part. */
function idle(mm2: number, amps = 10, more: readonly string[] = []): Grounded[] {
	const circuit = benchCircuit({
		parts: [battery, ...["F1", ...more].map((id) => part(id, "fuse", ["in", "out"], { values: { amps } }))],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > F1.in", 2.5),
			wire("W2", "F1.out > stowed", mm2),
			...more.map((id) => wire(`W-${id}`, `BAT.+ > ${id}.in`, 2.5)),
		],
	});
	return idleFuse.check(circuit).map((finding) => grounds(circuit.loom, finding));
}

const grounds = (loom: Loom, finding: Grounded["finding"]): Grounded => ({
	...{ of: "converted", finding, grounds: groundsOf(loom, finding) },
});

test("the grounds are the rows along the path", () => {
	expect(idle(0.5)[0]!.grounds).toEqual([
		"F1: fuse, amps 10",
		"F1.out: out",
		expect.stringMatching(/^W2: F1\.out to (stowed|loose), 0\.5 mm2 /),
	]);
});

test("an acceptance covers the finding as it was, and no longer once a value along its path is another", () => {
	const [accepted] = idle(0.5);
	const against = (findings: Grounded[]) => matchAcceptances(findings, [accepted!]);
	expect(against(idle(0.5)).byFinding).toEqual([[{ acceptance: accepted, changed: [] }]]);
	const [changed] = against(idle(0.75)).byFinding[0]!;
	expect(changed!.changed).toEqual([
		expect.stringMatching(/^no longer: W2: .* 0\.5 mm2/),
		expect.stringMatching(/^new: W2: .* 0\.75 mm2/),
	]);
	expect(against(idle(0.5, 15)).byFinding[0]![0]!.changed).toEqual([
		"no longer: F1: fuse, amps 10",
		"new: F1: fuse, amps 15",
	]);
});

test("other words of the finding are told too; what is no longer found is gone, of the other loom or rule nothing", () => {
	const [accepted] = idle(0.5);
	const { finding } = accepted!;
	const graver = { ...accepted!, finding: { ...finding, severity: "stop" as const, why: "It burns." } };
	expect(matchAcceptances([graver], [accepted!]).byFinding[0]![0]!.changed).toEqual([
		"Severity was: note",
		`Reason was: ${finding.why}`,
	]);
	for (const other of [
		{ ...accepted!, of: "delivered" },
		{ ...accepted!, finding: { ...finding, rule: "another" } },
		{ ...accepted!, finding: { ...finding, where: "elsewhere", path: ["X"] } },
	])
		expect(matchAcceptances([other], [accepted!])).toEqual({ byFinding: [[]], gone: [accepted] });
});

test("two findings of one rule are kept apart: each acceptance goes to its own, in whatever order", () => {
	const findings = idle(0.5, 10, ["F2", "F3"]);
	expect(findings.length).toBe(3);
	fc.assert(
		fc.property(fc.shuffledSubarray(findings), fc.shuffledSubarray(findings), (now, accepted) => {
			const { byFinding, gone } = matchAcceptances(now, accepted);
			for (const [k, list] of byFinding.entries())
				expect(list).toEqual(accepted.includes(now[k]!) ? [{ acceptance: now[k], changed: [] }] : []);
			expect(gone).toEqual(accepted.filter((one) => !now.includes(one)));
		}),
		{ seed: 5, numRuns: 30 },
	);
});
