import { expect, test } from "vitest";
import type { Loom, Wire } from "../../loom/index.js";
import { compareLooms } from "../../recipe/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { type Journey, travel } from "./travel.js";

const main = demoCar("main");
const journey = travel(main.tables, demoCar("other-market").tables.delivered);

const of = (name: string, { steps }: Journey = journey) => steps.find(({ step }) => step.step === name)!;
const kinds = (name: string) => of(name).reasons.map(({ kind }) => kind);

test("on its own car every step applies, and the car comes out the same", () => {
	const home = travel(main.tables, main.delivered);
	expect(home.steps.filter(({ verdict }) => verdict !== "applies")).toEqual([]);
	expect(compareLooms(home.loom, main.converted)).toEqual([]);
	expect(home.left).toEqual([]);
});

const rewired = (loom: Loom, change: (wire: Wire) => Wire): Loom => ({
	...loom,
	wires: new Map([...loom.wires.values()].map(change).map((wire) => [wire.id, wire])),
});

test("on a car whose wires are listed from their other ends nothing changes", () => {
	const turned = rewired(main.delivered, (wire) => ({ ...wire, from: wire.to, to: wire.from }));
	const there = travel(main.tables, turned);
	expect(there.steps.filter(({ verdict }) => verdict !== "applies")).toEqual([]);
	const contacts = (loom: Loom) => compareLooms(loom, main.converted).filter(({ contact }) => contact !== "");
	// The halves of a cut wire keep the name of their `from` side, so names change over; places do not.
	for (const { before, after } of contacts(there.loom))
		expect(before?.reaches.map(({ place, metres }) => [place, metres.toFixed(6)])).toEqual(
			after?.reaches.map(({ place, metres }) => [place, metres.toFixed(6)]),
		);
});

test("on a car whose wires all have other names, the names are all there is to decide", () => {
	const renamed = rewired(main.delivered, (wire) => ({ ...wire, id: `Q-${wire.id}` }));
	const { steps, left } = travel(main.tables, renamed);
	expect(steps.filter(({ verdict }) => verdict === "not here")).toEqual([]);
	expect(new Set(steps.flatMap(({ reasons }) => reasons.map(({ kind }) => kind)))).toEqual(new Set(["name"]));
	expect(left).toEqual([]);
});

test("the other market: what is not as it was is named", () => {
	expect(of("18").verdict).toBe("decide");
	expect(kinds("18")).toEqual(["size", "colour", "length"]);
	expect(of("18").reasons[2]).toMatchObject({ subject: "W170a", was: "0.9 m", is: "1.8 m" });
	expect([of("22").verdict, kinds("22")]).toEqual(["not here", ["taken"]]);
	expect(of("22").reasons[0]!.text).toBe("X-BD.36b is taken here by W762a (headlamp levelling)");
	expect(of("23").reasons).toContainEqual(
		expect.objectContaining({ kind: "contact", was: "ECU.A24", is: "ECU.A44" }),
	);
	expect([of("12").verdict, kinds("12")]).toEqual(["not here", ["absent"]]);
	expect(of("28").reasons).toMatchObject([{ kind: "name", was: "W421b", is: "W430" }]);
	expect(of("68").here.from).toBe("ICU.21");
	expect(of("68").reasons[0]).toMatchObject({ kind: "contact", was: "ICU.13", is: "ICU.21" });
});

test("the other market: what is the same by another name or listed otherwise is no trouble", () => {
	// W423 is listed from its other end, W430 is W421b.
	expect(of("34").verdict).toBe("applies");
	expect(of("28").here.wire).toBe("W430");
	expect(journey.loom.wires.get("N06")!.to).toEqual({ at: "contact", contact: "S-REV.1" });
});

test("a step that builds on one that cannot be done waits for it", () => {
	const { delivered } = main;
	const without = { ...delivered, wires: new Map([...delivered.wires].filter(([id]) => id !== "W170a")) };
	const there = travel(main.tables, without);
	expect(of("18", there)).toMatchObject({
		verdict: "not here",
		reasons: [{ kind: "absent", subject: "W170a" }],
	});
	expect(of("20", there)).toMatchObject({ verdict: "not here", reasons: [{ kind: "waits" }] });
	expect(of("20", there).reasons[0]!.text).toBe("W170a+b is made by step 18, which cannot be done here");
});

test("a restraint circuit here is not touched, whatever it was there", () => {
	const marked = rewired(main.delivered, (wire) =>
		wire.id === "W423" ? { ...wire, marks: ["pyrotechnic"] } : wire,
	);
	expect(of("34", travel(main.tables, marked))).toMatchObject({
		verdict: "not here",
		reasons: [{ kind: "restraint" }],
	});
});

test("a lead that nothing isolates there is left over", () => {
	const { delivered } = main;
	const more: Wire = { ...delivered.wires.get("W425")!, id: "W999", circuit: "spare" };
	const contacts = new Map(delivered.contacts);
	contacts.set("S-RNG.9", { ...contacts.get("S-RNG.8")!, id: "S-RNG.9", cavity: "9", role: "C3" });
	const wires = new Map(delivered.wires).set("W999", {
		...more,
		from: { at: "joint", joint: "G13" },
		to: { at: "contact", contact: "S-RNG.9" },
	});
	expect(travel(main.tables, { ...delivered, contacts, wires }).left).toEqual(["W999"]);
});
