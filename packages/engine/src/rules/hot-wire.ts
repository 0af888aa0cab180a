/** No conductor may get hotter than its insulation stands. */
import { branchAmps, type Circuit, CircuitError, heatWires, type Operating } from "../circuit/index.js";
import { bundleShare, INSULATION_CELSIUS, ratedAmps, wireRise } from "../units/index.js";
import { finding } from "./support/finding.js";
import { loadsOf } from "./support/loads.js";
import { type Settled, wholeConditions } from "./support/points.js";
import { amount, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "hot-wire";

/** Air around the loom in degrees C: a warm day, common practice, no source. */
export const AIR_CELSIUS = 40;
/** Highest conductor temperature in degrees C: class B, from memory ISO 6722. */
export const MOST_CELSIUS = INSULATION_CELSIUS.B;

/**
 * Steady heat at the currents of every listed condition in which the car stands whole, by bundle. Cranking lasts
 * seconds and is left out. Conditions in which no wire could get that hot even in the fullest bundle are not solved.
 */
export const hotWire: Rule = {
	id,
	title: "No conductor gets hotter than its insulation stands",
	source: `reference/electrical/ampacity-free-air.csv and fuse-wire-rules.csv R8; air ${AIR_CELSIUS} and conductor ${MOST_CELSIUS} degrees C: insulation class B, from memory ISO 6722`,
	check(circuit) {
		const worst = new Map<string, { celsius: number; amps: number; condition: string }>();
		for (const { condition, point } of wholeConditions(circuit).filter((at) => !cranks(circuit, at))) {
			if (!couldBeHot(circuit, point)) continue;
			try {
				const heated = heatWires(circuit, condition, {
					ambientCelsius: AIR_CELSIUS,
					insulationCelsius: MOST_CELSIUS,
				});
				for (const wire of heated.overheated) {
					const celsius = heated.celsius.get(wire)!;
					if (celsius > (worst.get(wire)?.celsius ?? 0))
						worst.set(wire, { celsius, amps: Math.abs(heated.amps.get(wire)!), condition });
				}
			} catch (error) {
				// Warm wires that make a relay drop out: the cold point is judged by the other rules.
				if (!(error instanceof CircuitError)) throw error;
			}
		}
		return [...worst].map(([wire, { celsius, amps, condition }]) =>
			report(circuit, wire, celsius, amps, condition),
		);
	},
};

function cranks(circuit: Circuit, { point }: Settled): boolean {
	return loadsOf(circuit).some(
		(load) => load.kind === "starter motor" && Math.abs(branchAmps(point, load.branch)) > 1,
	);
}

/** Is a wire over the limit, were its bundle as full as any? */
function couldBeHot(circuit: Circuit, point: Operating): boolean {
	const fullest = bundleShare(Number.POSITIVE_INFINITY);
	return circuit.branches.some(({ owner }, branch) => {
		const wire = owner.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
		if (wire === undefined) return false;
		const rated = ratedAmps(wire.mm2) * (wire.bundle === "" ? 1 : fullest);
		return AIR_CELSIUS + wireRise(branchAmps(point, branch), rated, MOST_CELSIUS) > MOST_CELSIUS;
	});
}

function report(circuit: Circuit, id_: string, celsius: number, amps: number, condition: string): Finding {
	const wire = circuit.loom.wires.get(id_)!;
	const ends = [wire.from, wire.to].flatMap((end) =>
		end.at === "contact" ? [end.contact] : end.at === "joint" ? [end.joint] : [],
	);
	return finding(circuit, id, "stop", {
		where: `${wireText(circuit.loom, id_)}${wire.bundle && `, bundle ${wire.bundle}`}`,
		why: `At ${amount(amps, "A")} in '${condition}' its conductor comes to ${amount(celsius, "degrees C")} in air of ${AIR_CELSIUS}; its insulation stands ${MOST_CELSIUS}.`,
		mend: "Use a larger size, or take load off it.",
		path: [...ends.slice(0, 1), id_, ...ends.slice(1)],
	});
}
