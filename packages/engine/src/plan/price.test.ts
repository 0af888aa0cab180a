import { describe, expect, test } from "vitest";
import { readSoundTables } from "../loom/index.js";
import { demoFiles } from "../test-support/demo.test-helper.js";
import { priceByHand } from "./by-hand.js";
import { Costs } from "./costs.js";
import { step } from "./leg.js";
import { Places } from "./places.js";
import { Pricer, priceNewLoom, priceRecipe, timed } from "./price.js";
import { readPlanTables } from "./read-plan-tables.js";

const car = readSoundTables(demoFiles("small"));
const plan = readPlanTables(
	{
		"targets.csv": "target,from,to,size\n",
		"costs.csv": "item,zone,minutes,price\nhour,,,30\npassage,front/rear,40,2\njoint risk,rear,10,\n",
		"places.csv": "place,zone\ndash,front\nrear,rear\n",
	},
	car,
);
const costs = new Costs(plan.costs);
const places = new Places(car.delivered, car.newParts, plan.places);
const pricer = () => new Pricer(costs, places, car.delivered, car.newParts);
const priced = (...steps: Parameters<Pricer["price"]>[0]) => {
	const { own, shared } = pricer().price(steps);
	return { ...own, shared: Object.fromEntries(shared) };
};

describe("by hand, with the default prices of docs/plan.md", () => {
	test("an extension: splice and risk by its zone once, a metre of wire, a crimp into an opened housing", () => {
		const extend = step("extend", "", {
			wire: "W9",
			to: "CU.7",
			fresh: "N1",
			joint: "SN1",
			mm2: 2,
			metres: 0.5,
			place: "dash",
		});
		// Work: 0.5 m x 8 + crimp 2. Material: 0.5 m x (0.15 + 0.35 x 2) + crimp 0.5.
		expect(priced(extend)).toEqual({
			minutes: 6,
			material: 0.5 * 0.85 + 0.5,
			risk: 0,
			shared: {
				"joint SN1": { minutes: 5, material: 0.9, risk: 6 },
				"open X-CU": { minutes: 3, material: 0, risk: 0 },
			},
		});
	});

	test("the new wire is like the one it continues where its row gives no size", () => {
		// W4 has 1.5 mm2.
		const extend = step("extend", "", {
			wire: "W4",
			to: "K1.87",
			fresh: "N1",
			joint: "SN1",
			metres: 1,
			place: "dash",
		});
		expect(priced(extend).material).toBeCloseTo(0.15 + 0.35 * 1.5 + 0.5);
	});

	test("joints in a zone of their own risk, and one splice for all the wires joined to it", () => {
		const join = (wire: string) => step("join", "", { wire, to: "SN1", place: "rear, left" });
		expect(priced(join("W11"), join("W12")).shared).toEqual({
			"joint SN1": { minutes: 5, material: 0.9, risk: 10 },
		});
	});

	test("a wire through a wall pays the passage once; a ground point takes a ring", () => {
		const wire = (fresh: string) =>
			step("add wire", "", { fresh, from: "K1.87", to: "E-L.1", mm2: 1, metres: 1, place: "dash" });
		expect(priced(wire("N1"), wire("N2")).shared).toMatchObject({
			"passage front/rear": { minutes: 40, material: 2 },
		});
		const ring = step("tie to ground", "", { wire: "W13", to: "G1", place: "rear, left" });
		expect(priced(ring)).toMatchObject({ minutes: 3, material: 0.6, shared: {} });
	});

	test("a terminal out of its cavity, a cut along the run, and the piece it leaves", () => {
		const off = step("cut", "", { wire: "W9", at: "to", place: "dash" });
		expect(priced(off)).toMatchObject({ minutes: 2, shared: { "open X-CU": { minutes: 3 } } });
		const cut = step("cut", "", { wire: "W9", at: { metres: 0.2 }, place: "dash" });
		const piece = step("cut", "", { wire: "W9+b", at: "to", place: "dash" });
		expect(priced(cut, piece)).toMatchObject({ minutes: 1 + 2, shared: { "open X-CU": { minutes: 3 } } });
	});

	test("a part's own minutes go before the table's", () => {
		const remove = (minutes?: number) => step("remove part", "", { part: "K1", minutes });
		expect([priced(remove()).minutes, priced(remove(12)).minutes]).toEqual([5, 12]);
	});

	test("material counts as minutes at the price of an hour", () => {
		// 3 of material at 30 an hour are 6 minutes.
		expect(costs.total({ minutes: 10, material: 3, risk: 2 })).toBe(18);
	});
});

test("minutes of the steps add up to those of the recipe, whatever is shared", () => {
	const steps = timed(
		pricer(),
		car.recipe.map((one) => ({ ...one, minutes: undefined })),
	);
	const whole = priceRecipe(
		pricer(),
		car.recipe.map((one) => ({ ...one, minutes: undefined })),
	);
	expect(steps.reduce((sum, { minutes }) => sum + minutes!, 0)).toBeCloseTo(whole.minutes, 0);
	expect(priceByHand(car, plan).joints).toBe(2);
});

test("a wire that nobody has cannot be priced", () => {
	const extend = step("extend", "", { wire: "W99", to: "K1.87", fresh: "N1", joint: "SN1", metres: 1 });
	expect(() => priced(extend)).toThrow(/no wire W99/);
});

test("a new loom: every wire with its ends, restraint wiring left out", () => {
	const { delivered } = car;
	const marked = {
		...delivered,
		wires: new Map([...delivered.wires].map(([id, wire]) => [id, { ...wire, marks: ["pyrotechnic"] }])),
	};
	expect(priceNewLoom(costs, marked)).toEqual({ minutes: 480, material: 40, risk: 0 });
	const one = { ...delivered, wires: new Map([["W9", delivered.wires.get("W9")!]]) };
	// 0.4 m x 8 x 0.3, two crimps.
	expect(priceNewLoom(costs, one).minutes).toBeCloseTo(480 + 0.96 + 4);
});
