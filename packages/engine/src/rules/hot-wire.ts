/** No conductor may get hotter than its insulation stands. */
import { branchAmps, type Circuit } from "../circuit/index.js";
import type { Wire } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { AIR_CELSIUS, COOL_DENSITY, LASTING_CELSIUS, loadedIn, steadyCelsius } from "./support/heat.js";
import { cranks } from "./support/loads.js";
import { wholeConditions } from "./support/points.js";
import { amount, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "hot-wire";

interface Hot {
	readonly wire: Wire;
	readonly celsius: number;
	readonly amps: number;
	readonly condition: string;
}

/**
 * Steady heat at the currents of every listed condition in which the car stands whole, by the loaded wires of its
 * bundle. Cranking lasts seconds and is left out. Warm wires would carry a little less: the careful side.
 */
export const hotWire: Rule = {
	id,
	title: "No conductor gets hotter than its insulation stands",
	source: `reference/electrical/ampacity-free-air.csv and fuse-wire-rules.csv R8; air ${AIR_CELSIUS} degrees C: common practice, no source; conductor ${LASTING_CELSIUS}: class B, insulation-limits.csv 001`,
	check(circuit) {
		const worst = new Map<string, Hot>();
		for (const at of wholeConditions(circuit)) {
			if (cranks(circuit, at)) continue;
			const { point, condition } = at;
			const loaded = loadedIn(point);
			circuit.branches.forEach(({ owner }, branch) => {
				const wire = owner.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
				if (wire === undefined) return;
				const amps = Math.abs(branchAmps(point, branch));
				if (amps < COOL_DENSITY * wire.mm2) return;
				const celsius = steadyCelsius(
					wire.mm2,
					amps,
					wire.bundle === "" ? 1 : (loaded.get(wire.bundle) ?? 1),
				);
				if (celsius > LASTING_CELSIUS && celsius > (worst.get(wire.id)?.celsius ?? 0))
					worst.set(wire.id, { wire, celsius, amps, condition });
			});
		}
		return [...worst.values()].map((hot) => report(circuit, hot));
	},
};

function report(circuit: Circuit, { wire, celsius, amps, condition }: Hot): Finding {
	const ends = [wire.from, wire.to].flatMap((end) =>
		end.at === "contact" ? [end.contact] : end.at === "joint" ? [end.joint] : [],
	);
	const warm = Number.isFinite(celsius)
		? `comes to ${amount(celsius, "degrees C")}`
		: "finds no rest and burns";
	return finding(circuit, id, "stop", {
		where: `${wireText(circuit.loom, wire.id)}${wire.bundle && `, bundle ${wire.bundle}`}`,
		why: `At ${amount(amps, "A")} in '${condition}' its conductor ${warm}, in air of ${AIR_CELSIUS}; its insulation stands ${LASTING_CELSIUS}.`,
		mend: "Use a larger size, or take load off it.",
		path: [...ends.slice(0, 1), wire.id, ...ends.slice(1)],
	});
}
