import fc from "fast-check";
import type { Loom, NewParts, RecipeStep, Wire, WireEnd } from "../loom/index.js";
import { applyRecipe } from "./apply.js";
import { contact, end, joint, makeLoom, newParts, part, step, wire } from "./bench.test-helper.js";
import type { StepKind } from "./step-definition.js";

const kinds: readonly StepKind[] = [
	"cut",
	"extend",
	"join",
	"move terminal",
	"add wire",
	"tie to ground",
	"bridge",
	"remove part",
	"fit part",
	"isolate and stow",
];

/** A loom of up to 12 wires between anything: several in a cavity, loops, splices on splices. */
export const anyLoom: fc.Arbitrary<Loom> = fc
	.array(fc.record({ ends: fc.tuple(fc.nat(), fc.nat()), mm: fc.integer({ min: 2, max: 5000 }) }), {
		maxLength: 12,
	})
	.map((rows) => {
		const contacts = [
			...[1, 2, 3, 4].map((n) => contact(`E1.${n}`, "C1", `${n}`)),
			...[1, 2, 3].map((n) => contact(`T1.${n}`, "C2", `${n}`)),
			contact("K1.85"),
			contact("BAT.+"),
		];
		const joints = [joint("S1"), joint("S2"), joint("G1", "ground"), joint("B1", "bar")];
		const places = [...[...contacts, ...joints].map((place) => place.id), "cut", "stowed"];
		return makeLoom({
			parts: [
				part("E1", "control unit"),
				part("T1", "control unit"),
				part("C1", "connector"),
				part("C2", "connector"),
				part("K1", "relay"),
				part("BAT", "battery"),
			],
			contacts,
			joints,
			wires: rows.map(({ ends: [from, to], mm }, i) =>
				wire(`W${i + 1}`, pick(places, from), pick(places, to), { metres: mm / 1000 }),
			),
		});
	});

/** What a step is drawn from: its kind, numbers that pick its operands, and whether they must fit. */
export const anyDraws = fc.array(
	fc.record({
		kind: fc.constantFrom(...kinds),
		picks: fc.array(fc.nat(), { minLength: 4, maxLength: 4 }),
		fits: fc.boolean(),
	}),
	{ maxLength: 12 },
);
type Draw = typeof anyDraws extends fc.Arbitrary<(infer T)[]> ? T : never;

/** The recipe drawn: a step meant to fit takes its operands from the loom as it then is, where there are any. */
export function drawRecipe(loom: Loom, draws: readonly Draw[], fitsOnly: boolean): RecipeStep[] {
	const steps: RecipeStep[] = [];
	let now = loom;
	for (const draw of draws) {
		const name = `${steps.length + 1}`;
		const cells = draw.fits || fitsOnly ? fitting(now, draw, name) : wild(now, draw, name);
		if (!cells) continue;
		const drawn = step(draw.kind, { ...cells, step: name });
		steps.push(drawn);
		now = applyRecipe(now, [drawn], newParts).loom;
	}
	return steps;
}

function pick<T>(from: readonly T[], n: number): T {
	return from[n % from.length]!;
}

type Cells = Partial<RecipeStep>;

/** Operands without regard for whether they fit: names of any sort, or none. */
function wild(loom: Loom, { picks }: Draw, name: string): Cells {
	const [a, b, c, d] = picks as [number, number, number, number];
	const wires = ["", "W99", ...loom.wires.keys()];
	const places = ["", "Q.1", ...loom.contacts.keys(), ...loom.joints.keys(), ...loom.parts.keys()];
	return {
		wire: pick(wires, a),
		other: pick(wires, b),
		from: pick(places, c),
		to: pick(places, d),
		part: pick([...places, ...newParts.parts.keys(), ...newParts.joints.keys()], a),
		at: pick([undefined, "from" as const, "to" as const, { metres: (d % 7000) / 1000 }], b),
		fresh: pick(["", "W1", `N${name}`], c),
		joint: pick(["", "S1", `J${name}`], d),
		mm2: pick([undefined, 1], b),
		metres: pick([undefined, 0.5], c),
	};
}

/** Operands that fit by the words of docs/tables.md, found by looking through the whole loom; none if there are none. */
function fitting(loom: Loom, { kind, picks }: Draw, name: string): Cells | undefined {
	const [a, b, c, d] = picks as [number, number, number, number];
	const wires = [...loom.wires.values()];
	const oneLoose = wires.filter((row) => (row.from.at === "loose") !== (row.to.at === "loose"));
	const used = (id: string) => wires.some((row) => isAt(row.from, id) || isAt(row.to, id));
	const contacts = [...loom.contacts.keys()];
	const free = contacts.filter((id) => !used(id) || id === "BAT.+");
	const joints = [...loom.joints.keys()];
	const grounds = joints.filter((id) => loom.joints.get(id)?.kind === "ground");
	const made = { fresh: `N${name}`, joint: `J${name}`, mm2: 1, metres: ((d % 3000) + 1) / 1000 };
	const along = (row: Wire) => ({
		metres: (1 + (c % Math.max(1, Math.round(row.metres * 1000) - 1))) / 1000,
	});
	const some = (...lists: readonly (readonly unknown[])[]) => lists.every((list) => list.length > 0);
	switch (kind) {
		case "cut": {
			const row = some(wires) ? pick(wires, a) : undefined;
			if (!row) return undefined;
			const side = pick(["from", "to"] as const, c);
			if (b % 2 === 0 && row[side].at !== "loose") return { wire: row.id, at: side };
			return row.metres > 0.0015 ? { wire: row.id, at: along(row), fresh: made.fresh } : undefined;
		}
		case "extend":
			return some(oneLoose)
				? { ...made, wire: pick(oneLoose, a).id, to: pick([...free, ...joints], b) }
				: undefined;
		case "join": {
			if (!some(oneLoose)) return undefined;
			const row = pick(oneLoose, a);
			const { joint, fresh } = made;
			if (b % 3 === 0) return { wire: row.id, to: pick(joints, c) };
			const others = (b % 3 === 1 ? oneLoose : wires).filter((next) => next !== row && next.metres > 0.0015);
			if (!some(others)) return undefined;
			const next = pick(others, d);
			return { wire: row.id, other: next.id, joint, fresh, at: b % 3 === 1 ? undefined : along(next) };
		}
		case "move terminal": {
			const from = contacts.filter(used);
			if (!some(from)) return undefined;
			const to = free.filter((id) => id !== pick(from, a));
			return some(to) ? { from: pick(from, a), to: pick(to, b) } : undefined;
		}
		case "add wire": {
			const from = pick([...free, ...joints], a);
			const to = [...free, ...joints].filter((id) => id !== from);
			return { ...made, from, to: pick(to, b) };
		}
		case "tie to ground":
			if (a % 2 === 0)
				return some(oneLoose) ? { wire: pick(oneLoose, b).id, to: pick(grounds, c) } : undefined;
			return some(free) ? { ...made, from: pick(free, b), to: pick(grounds, c) } : undefined;
		case "bridge":
			return contacts.length > 1
				? {
						...made,
						from: pick(contacts, a),
						to: pick(
							contacts.filter((id) => id !== pick(contacts, a)),
							b,
						),
					}
				: undefined;
		case "remove part": {
			const parts = [...loom.parts.keys()].filter((id) =>
				[...loom.contacts.values()].every((row) => row.connector !== id || row.part === id),
			);
			return some(parts) ? { part: pick(parts, a) } : undefined;
		}
		case "fit part": {
			const parts = fittable(loom, newParts);
			return some(parts) ? { part: pick(parts, a) } : undefined;
		}
		case "isolate and stow": {
			const bare = wires.filter((row) => [row.from, row.to].some((at) => at.at === "loose" && !at.insulated));
			return some(bare) ? { wire: pick(bare, a).id } : undefined;
		}
	}
}

const isAt = (at: WireEnd, id: string): boolean => JSON.stringify(at) === JSON.stringify(end(id));

const fittable = (loom: Loom, { parts, joints, contacts }: NewParts): string[] =>
	[...parts.keys(), ...joints.keys()].filter(
		(id) =>
			!loom.parts.has(id) &&
			!loom.joints.has(id) &&
			[...contacts.values()].every((row) => row.part !== id || loom.parts.has(row.connector)),
	);
