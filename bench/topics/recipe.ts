/** Random wiring mistakes in the demo car's recipe: how many of those that matter electrically a rule finds before anything is cut. */
import { fileURLToPath } from "node:url";
import { readFolder } from "@loomwright/shop";
import { type Car, openCar } from "../../packages/engine/src/car.js";
import type { Figure } from "../figure.js";
import { seeded } from "../linalg/network-generator.js";
import { type Tried, tryMistakes } from "../recipe/try-mistakes.js";

const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));
const SEED = 2026;
const MISTAKES = 300;

export async function* run(): AsyncGenerator<Figure> {
	const car: Car = openCar(readFolder(folder).tables);
	const { tried, refused } = tryMistakes(car, seeded(SEED), MISTAKES);
	const matter = tried.filter((one) => one.why !== undefined);
	const caught = matter.filter(isCaught);
	yield { figure: "mistakes that the recipe itself refuses (not counted)", value: refused, unit: "mistakes" };
	yield { figure: "mistakes put into the recipe", value: tried.length, unit: "mistakes" };
	yield { figure: "of them matter electrically", value: matter.length, unit: "mistakes" };
	yield {
		figure: "of those a rule finds (stop or warn)",
		value: share(caught, matter),
		unit: "%",
		goal: { atLeast: 95 },
	};
	yield {
		figure: "of those a rule finds, notes counted",
		value: share(
			matter.filter((one) => one.rules.length > 0),
			matter,
		),
		unit: "%",
	};
	const rest = tried.filter((one) => one.why === undefined);
	yield { figure: "of the others a rule speaks", value: share(rest.filter(isCaught), rest), unit: "%" };
	yield {
		figure: "rules that speak of a mistake that matters, median",
		value: median(caught),
		unit: "rules",
	};
	for (const kind of [...new Set(tried.map((one) => one.kind))].sort()) {
		const own = matter.filter((one) => one.kind === kind);
		const all = tried.filter((one) => one.kind === kind).length;
		yield {
			figure: `${kind}, ${all}: found of ${own.length} that matter`,
			value: own.filter(isCaught).length,
			unit: "mistakes",
		};
	}
	for (const { kind, text, why } of matter.filter((one) => !isCaught(one)))
		yield { figure: `missed, ${kind}: ${text}; ${why}`, value: 1, unit: "mistakes" };
}

const isCaught = (one: Tried) => one.loud.length > 0;
const share = (part: readonly unknown[], whole: readonly unknown[]) =>
	(100 * part.length) / Math.max(1, whole.length);

function median(caught: readonly Tried[]): number {
	const counts = caught.map((one) => one.loud.length).sort((x, y) => x - y);
	return counts[counts.length >> 1] ?? 0;
}
