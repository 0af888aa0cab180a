/**
 * The posterior machinery on published systems: reference Bayesian networks with known posteriors and
 * consistency-based diagnosis examples with known diagnoses (reference/diagnosis, sources there and below).
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Fault, Pattern } from "../faults/index.js";
import type { Item } from "./items.js";
import { posterior } from "./posterior.js";
import type { Evidence } from "./types.js";

const evidence: Evidence = {
	title: "",
	of: "converted",
	occasions: [
		{ note: "", reseated: "", codes: undefined, units: [], functions: {}, readings: [], bench: {} },
	],
};

function reference<T>(name: string): T {
	const file = fileURLToPath(new URL(`../../../../reference/diagnosis/${name}.json`, import.meta.url));
	return JSON.parse(readFileSync(file, "utf8")) as T;
}

function hypothesis(id: string, prior: number, patterns: readonly Pattern[]): Fault {
	return {
		id,
		kind: "",
		where: id,
		place: "",
		prior,
		patterns,
		shakenBy: "",
		inParts: [],
		path: [],
		mend: "",
	};
}

/** A pattern that stands for a state of the network: the state is coded in the branch numbers. */
const state = (weight: number, branches: readonly number[]): Pattern => ({
	weight,
	change: { branches: branches.map((branch) => ({ branch, siemens: 0 })), added: [] },
});
const has = (pattern: Pattern, branch: number) => pattern.change.branches.some((b) => b.branch === branch);

function item(text: string, likelihood: (pattern: Pattern) => number): Item {
	return {
		text,
		occasion: 0,
		entry: { kind: "bench", part: text },
		telling: true,
		when: "",
		stray: 0,
		log: (fault, pattern) => (fault === undefined ? Number.NEGATIVE_INFINITY : Math.log(likelihood(pattern))),
	};
}

describe("burglary network (S. Russell, P. Norvig, 'Artificial Intelligence: A Modern Approach', from memory)", () => {
	const [B, E, A] = [0, 1, 2];
	const alarm = (b: boolean, e: boolean) => (b ? (e ? 0.95 : 0.94) : e ? 0.29 : 0.001);
	const prior = { [B]: 0.001, [E]: 0.002 };
	/** All states with `fixed` given; weights are their chances given it. */
	function patterns(fixed: number, on: boolean): Pattern[] {
		const list: Pattern[] = [];
		for (const b of [true, false])
			for (const e of [true, false])
				for (const a of [true, false]) {
					const given = fixed === B ? b : e;
					if (given !== on) continue;
					const other = fixed === B ? (e ? prior[E]! : 1 - prior[E]!) : b ? prior[B]! : 1 - prior[B]!;
					const weight = other * (a ? alarm(b, e) : 1 - alarm(b, e));
					list.push(state(weight, [...(b ? [B] : []), ...(e ? [E] : []), ...(a ? [A] : [])]));
				}
		return list;
	}
	const items: Readonly<Record<string, Item>> = {
		J: item("John calls", (p) => (has(p, A) ? 0.9 : 0.05)),
		M: item("Mary calls", (p) => (has(p, A) ? 0.7 : 0.01)),
		A: item("alarm", (p) => (has(p, A) ? 1 : 0)),
		E: item("earthquake", (p) => (has(p, E) ? 1 : 0)),
	};
	const rows =
		reference<Record<string, { query: string; evidence: Record<string, string>; posterior: number }[]>>(
			"posteriors",
		);
	const asked = rows["burglary_aima"]!.filter(
		(row) => ["B", "E"].includes(row.query) && Object.keys(row.evidence).every((name) => name in items),
	);

	it.each(asked.map((row) => [`P(${row.query} | ${Object.keys(row.evidence).join(", ")})`, row] as const))(
		"%s",
		(_name, row) => {
			const fixed = row.query === "B" ? B : E;
			const yes = hypothesis("yes", prior[fixed]!, patterns(fixed, true));
			const no = hypothesis("no", 1 - prior[fixed]!, patterns(fixed, false));
			const seen = Object.keys(row.evidence).map((name) => items[name]!);
			const { weighed } = posterior([yes, no], seen, evidence, { soundPrior: 1e-30, pairs: false });
			expect(weighed.find((w) => w.fault?.id === "yes")!.posterior).toBeCloseTo(row.posterior, 9);
		},
	);

	it("covers at least five published posteriors", () => {
		expect(asked.length).toBeGreaterThanOrEqual(5);
	});
});

interface Consistency {
	readonly p_fail: number;
	readonly minimal_diagnoses: string[][];
}

/** Sets of components that are possible diagnoses, minimal ones only. */
function minimalDiagnoses(
	names: readonly string[],
	consistent: (broken: ReadonlySet<string>) => boolean,
	pFail: number,
) {
	const odds = pFail / (1 - pFail);
	const faults = names.map((name, k) => hypothesis(name, odds, [state(1, [k])]));
	const broken = (pattern: Pattern) => new Set(pattern.change.branches.map((b) => names[b.branch]!));
	const seen = item("what was observed", (pattern) => (consistent(broken(pattern)) ? 1 : 0));
	const { weighed } = posterior(faults, [seen], evidence, { soundPrior: 1 });
	const possible = weighed.filter((w) => w.fault && w.posterior > 0);
	const sets = possible.map((w) => ({ set: w.fault!.id.split(" & "), posterior: w.posterior }));
	const minimal = sets.filter(
		({ set }) =>
			!sets.some((other) => other.set.length < set.length && other.set.every((x) => set.includes(x))),
	);
	return { minimal: minimal.map(({ set }) => [...set].sort()).sort(), sets };
}

describe("diagnoses from consistency", () => {
	const table = reference<Record<string, Consistency>>("consistency");

	it("three multipliers and two adders (J. de Kleer, B. C. Williams, 'Diagnosing multiple faults', 1987)", () => {
		// A=3 B=2 C=2 D=3 E=3; X=A*C, Y=B*D, Z=C*E; F=X+Y seen 10, G=Y+Z seen 12. A broken part may give any value.
		const consistent = (broken: ReadonlySet<string>) => {
			const ok = (name: string) => !broken.has(name);
			const values = Array.from({ length: 25 }, (_, v) => v - 4);
			const x = ok("M1") ? [6] : values;
			const y = ok("M2") ? [6] : values;
			const z = ok("M3") ? [6] : values;
			return x.some((X) =>
				y.some((Y) => (!ok("A1") || X + Y === 10) && z.some((Z) => !ok("A2") || Y + Z === 12)),
			);
		};
		const { p_fail, minimal_diagnoses } = table["polybox_F10_G12"]!;
		const { minimal, sets } = minimalDiagnoses(["M1", "M2", "M3", "A1", "A2"], consistent, p_fail);
		expect(minimal).toEqual(minimal_diagnoses.map((set) => [...set].sort()).sort());
		// A double fault is p / (1 - p) times as likely as a single one, as published: 0.004829 to 0.478026.
		const of = (...names: string[]) =>
			sets.find(({ set }) => set.length === names.length && names.every((n) => set.includes(n)))!.posterior;
		expect(of("M2", "M3") / of("M1")).toBeCloseTo(0.004828549755703645 / 0.47802642581466087, 9);
		expect(of("A1")).toBeCloseTo(of("M1"), 12);
	});

	it("full adder (R. Reiter, 'A theory of diagnosis from first principles', 1987)", () => {
		// a=1 b=0 carry in=1; sum seen 1, carry seen 0. X1=a^b, A1=a&b, X2=X1^cin (sum), A2=X1&cin, O1=A1|A2 (carry).
		const bits = [0, 1];
		const consistent = (broken: ReadonlySet<string>) => {
			const out = (name: string, value: number) => (broken.has(name) ? bits : [value]);
			return out("X1", 1).some((x1) =>
				out("A1", 0).some((a1) =>
					out("A2", x1 & 1).some((a2) => out("X2", x1 ^ 1).includes(1) && out("O1", a1 | a2).includes(0)),
				),
			);
		};
		const { minimal_diagnoses } = table["full_adder_reiter"]!;
		const { minimal } = minimalDiagnoses(["X1", "X2", "A1", "A2", "O1"], consistent, 0.01);
		expect(minimal).toEqual(minimal_diagnoses.map((set) => [...set].sort()).sort());
	});
});
