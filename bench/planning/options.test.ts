import { expect, test } from "vitest";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import { type Loom, readSoundTables } from "../../packages/engine/src/loom/index.js";
import { feedsOf } from "../../packages/engine/src/plan/feeds.js";
import { finish } from "../../packages/engine/src/plan/finish.js";
import { Nets } from "../../packages/engine/src/plan/nets.js";
import { choicesOf } from "../../packages/engine/src/plan/options.js";
import { readPlanTables } from "../../packages/engine/src/plan/read-plan-tables.js";
import { situation } from "../../packages/engine/src/plan/situation.js";
import type { Option, WantedCircuit } from "../../packages/engine/src/plan/types.js";
import { verify } from "../../packages/engine/src/plan/verify.js";
import { randomOf } from "../finding/random.js";
import { smallCase } from "./small-case.js";

const CARS = 60;
/** Options looked at of one car; the rest differ from them in a detail. */
const MOST = 40;

/** The car as a random small one with some wires that must not be touched. */
function marked(seed: number) {
	const files = smallCase(randomOf(seed));
	const untouched = seed % 3 === 0 ? "W2" : seed % 3 === 1 ? "W4" : "";
	const [head, ...rows] = files["wires.csv"]!.split("\n");
	const wires = rows.map((row) => `${row},${row.startsWith(`${untouched},`) ? "no joints" : ""}`);
	const car = readSoundTables({ ...files, "wires.csv": [`${head},marks`, ...wires].join("\n") });
	return { car, plan: readPlanTables(files, car), untouched };
}

/** Whether a circuit's contact reaches a point over wires of its size alone. */
function wideEnough(loom: Loom, { from, mm2 }: WantedCircuit, reached: string): boolean {
	const wide = new Map([...loom.wires].filter(([, wire]) => wire.mm2 >= mm2));
	const nets = new Nets({ ...loom, wires: wide });
	const net = nets.ofContact(from);
	return (
		net !== undefined && net === (reached.includes(".") ? nets.ofContact(reached) : nets.ofJoint(reached))
	);
}

test("every option by itself, on random small cars: its steps fit, it conducts with the size wanted, joins nothing else, touches nothing marked", () => {
	let looked = 0;
	const ways = new Set<string>();
	for (let seed = 1; seed <= CARS; seed++) {
		const { car, plan, untouched } = marked(seed);
		const { at } = situation(car, plan, feedsOf(new Circuit(car.delivered)));
		const { options, facilities } = choicesOf(at, plan.circuits, true);
		const least = (option: Option) => plan.circuits.find(({ target }) => target === option.circuit)!;
		for (const option of options.slice(0, MOST)) {
			looked++;
			ways.add(option.way);
			const name = `seed ${seed}, ${option.circuit}: ${option.text}`;
			const wanted = least(option);
			const built = facilities.filter(({ id }) => option.needs.includes(id));
			const { applied, recipe } = finish(at, built, [option]);
			expect([name, applied.misfits]).toEqual([name, []]);
			const [check] = verify(at, applied.loom, [wanted]);
			expect([name, check!.reached === "", check!.strays]).toEqual([name, false, []]);
			expect(check!.ohms, name).toBeLessThan(0.5);
			expect([name, wideEnough(applied.loom, wanted, check!.reached)]).toEqual([name, true]);
			const worked = recipe.filter(({ kind }) => kind !== "isolate and stow");
			expect([
				name,
				worked.some(({ wire, other }) => untouched !== "" && [wire, other].includes(untouched)),
			]).toEqual([name, false]);
			const made = [...applied.loom.joints.values()].filter(
				({ id, kind }) => kind === "splice" && !at.base.joints.has(id),
			).length;
			expect(made, name).toBeLessThanOrEqual(wanted.mostJoints ?? at.costs.row("most joints").value);
		}
	}
	expect(looked).toBeGreaterThan(400);
	expect([...ways].sort()).toEqual(["extend", "join", "move", "new"]);
});
