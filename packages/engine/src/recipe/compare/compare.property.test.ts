import fc from "fast-check";
import { expect, test } from "vitest";
import type { Loom, WireEnd } from "../../loom/index.js";
import { applyRecipe } from "../apply.js";
import { newParts } from "../bench.test-helper.js";
import { anyDraws, anyLoom, drawRecipe } from "../random-recipe.test-helper.js";
import type { Change } from "./change.js";
import { compareLooms } from "./compare.js";
import { type Joined, joinedKey } from "./joined.js";
import { naturalOrder } from "./natural.js";

/** Two looms: one, and what a random recipe makes of it. */
const twoLooms = fc.tuple(anyLoom, anyDraws).map(([a, draws]) => {
	const b = applyRecipe(a, drawRecipe(a, draws, true), newParts).loom;
	return { a, b };
});
const settings = { seed: 21, numRuns: 150 };

/** The same loom otherwise written: rows in other order, wires the other way round. */
const rewritten = (loom: Loom): Loom => ({
	...loom,
	parts: new Map([...loom.parts].reverse()),
	contacts: new Map([...loom.contacts].reverse()),
	joints: new Map([...loom.joints].reverse()),
	wires: new Map(
		[...loom.wires].reverse().map(([id, wire]) => [id, { ...wire, from: wire.to, to: wire.from }]),
	),
});

test("a loom does not differ from itself, however it is written", () => {
	fc.assert(
		fc.property(anyLoom, (loom) => {
			expect(compareLooms(loom, loom)).toEqual([]);
			expect(compareLooms(loom, rewritten(loom))).toEqual([]);
		}),
		settings,
	);
});

test("two looms differ exactly if their tables do", () => {
	const plain = ({ parts, contacts, wires, joints }: Loom) =>
		[parts, contacts, joints, undirected(wires)].map((table) =>
			JSON.stringify([...table].sort(([x], [y]) => (x < y ? -1 : 1))),
		);
	const undirected = (wires: Loom["wires"]) =>
		new Map(
			[...wires].map(([id, { from, to, ...rest }]) => [id, { rest, ends: [from, to].map(endKey).sort() }]),
		);
	const endKey = (end: WireEnd) => JSON.stringify(end);
	let same = 0;
	fc.assert(
		fc.property(twoLooms, ({ a, b }) => {
			const equal = JSON.stringify(plain(a)) === JSON.stringify(plain(b));
			if (equal) same++;
			expect(compareLooms(a, b).length === 0).toBe(equal);
		}),
		settings,
	);
	expect(same).toBeGreaterThan(0);
});

test("at each contact: what was there, less each before, plus each after, is what is there", () => {
	/** Wire and far end of each wire at a contact, found by looking through all wires. */
	const there = (loom: Loom, contact: string): string[] =>
		[...loom.wires.values()].flatMap(({ id, from, to }) =>
			[
				[from, to],
				[to, from],
			].flatMap(([near, far]) => (near?.at === "contact" && near.contact === contact ? brief(id, far!) : [])),
		);
	const brief = (id: string, far: WireEnd) => `${id} ${JSON.stringify(far)}`;
	const briefOf = (joined: Joined | undefined) => (joined ? [brief(joined.wire.id, joined.far)] : []);
	fc.assert(
		fc.property(twoLooms, ({ a, b }) => {
			const changes = compareLooms(a, b);
			for (const contact of new Set([...a.contacts.keys(), ...b.contacts.keys()])) {
				const here = changes.filter((change) => change.contact === contact);
				const left = there(a, contact);
				for (const gone of here.flatMap((change) => briefOf(change.before))) {
					expect(left).toContain(gone);
					left.splice(left.indexOf(gone), 1);
				}
				left.push(...here.flatMap((change) => briefOf(change.after)));
				expect(left.sort()).toEqual(there(b, contact).sort());
			}
		}),
		settings,
	);
});

test("the other way round, before and after change places and kinds answer each other", () => {
	const answers: Record<string, string> = {
		"part fitted": "part removed",
		"wire added": "wire removed",
		"joint added": "joint removed",
		"wire taken off": "loose end fitted",
	};
	const mirror = new Map(Object.entries(answers).flatMap(([x, y]) => [[x, y] as const, [y, x] as const]));
	const key = (joined: Joined | undefined) => (joined ? joinedKey(joined) : "");
	fc.assert(
		fc.property(twoLooms, ({ a, b }) => {
			const there = compareLooms(a, b).filter((change) => mirror.has(change.kind));
			const back = compareLooms(b, a).filter((change) => mirror.has(change.kind));
			const line = (kind: string, place: string, x: Joined | undefined, y: Joined | undefined) =>
				[kind, place, key(x), key(y)].join("|");
			expect(
				there.map((c) => line(c.kind, c.contact || c.part || c.joint, c.before, c.after)).sort(),
			).toEqual(
				back.map((c) => line(mirror.get(c.kind)!, c.contact || c.part || c.joint, c.after, c.before)).sort(),
			);
		}),
		settings,
	);
});

test("each splice's way to a far end is the shortest, against all ways tried in turn", () => {
	/** Lengths from an end through splices to every end that is no splice: Bellman and Ford's relaxation. */
	const shortest = (loom: Loom, joined: Joined): Map<string, number> => {
		const far = new Map<string, number>();
		if (joined.far.at !== "joint") return far;
		const metres = new Map([[joined.far.joint, joined.wire.metres]]);
		const isSplice = (end: WireEnd) => end.at === "joint" && loom.joints.get(end.joint)?.kind === "splice";
		for (let round = 0; round <= loom.joints.size; round++)
			for (const wire of loom.wires.values())
				for (const [near, end] of [
					[wire.from, wire.to],
					[wire.to, wire.from],
				] as const) {
					const start = near.at === "joint" && isSplice(near) ? metres.get(near.joint) : undefined;
					if (start === undefined || wire === joined.wire || end.at !== "joint" || !isSplice(end)) continue;
					const way = start + wire.metres;
					if (way < (metres.get(end.joint) ?? Number.POSITIVE_INFINITY)) metres.set(end.joint, way);
				}
		for (const wire of loom.wires.values())
			for (const [near, end] of [
				[wire.from, wire.to],
				[wire.to, wire.from],
			] as const) {
				const start = near.at === "joint" && isSplice(near) ? metres.get(near.joint) : undefined;
				if (start === undefined || wire === joined.wire || end.at !== "contact") continue;
				const way = start + wire.metres;
				if (way < (far.get(end.contact) ?? Number.POSITIVE_INFINITY)) far.set(end.contact, way);
			}
		return far;
	};
	fc.assert(
		fc.property(twoLooms, ({ a, b }) => {
			for (const { after } of compareLooms(a, b)) {
				if (after?.far.at !== "joint" || b.joints.get(after.far.joint)?.kind !== "splice") continue;
				const found = new Map<string, number>();
				for (const { place, metres } of after.reaches)
					if (b.contacts.has(place))
						found.set(place, Math.min(metres, found.get(place) ?? Number.POSITIVE_INFINITY));
				const expected = shortest(b, after);
				expect([...found.keys()].sort()).toEqual([...expected.keys()].sort());
				for (const [place, metres] of expected) expect(found.get(place)).toBeCloseTo(metres, 6);
			}
		}),
		settings,
	);
});

test("in natural order, whichever way the tables are written", () => {
	const line = ({ connector, cavity, contact, part, joint, wire, kind }: Change) =>
		[connector, cavity, contact, part, joint, wire, kind].join("|");
	fc.assert(
		fc.property(twoLooms, ({ a, b }) => {
			const changes = compareLooms(a, b);
			const connectors = changes.map((change) => change.connector);
			expect(connectors).toEqual([...connectors].sort(naturalOrder));
			expect(compareLooms(rewritten(a), rewritten(b)).map(line)).toEqual(changes.map(line));
		}),
		settings,
	);
});
