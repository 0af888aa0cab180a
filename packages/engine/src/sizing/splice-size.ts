/** One splice: its barrel, its sleeve, the pull to test it to. */
import type { Circuit } from "../circuit/index.js";
import { endName, type Joint, wiresAtJoint } from "../loom/index.js";
import { outsideDiameter, sleeveFor, spliceBarrel } from "./cover.js";
import { pullForce, type Sourced, stripLength } from "./crimp.js";

export interface SpliceSize {
	readonly splice: string;
	readonly wires: readonly string[];
	/** Two wires end to end, or several side by side. */
	readonly kind: "butt crimp" | "parallel crimp";
	/** Sum of the wires. */
	readonly mm2: number;
	readonly barrelMm2: Sourced | undefined;
	/** With sealing glue, mm as supplied; undefined: none on the shelf spans both sides. */
	readonly sleeveMm: Sourced | undefined;
	/** Off the thinnest wire. */
	readonly stripMm: Sourced | undefined;
	readonly pullNewtons: Sourced | undefined;
	/** Must the sleeve be of the sealing kind? Always, and in a wet place it is looked at twice. */
	readonly wet: boolean;
}

/** Every splice with two wires or more. */
export function sizeSplices(circuit: Circuit): SpliceSize[] {
	return [...circuit.loom.joints.values()]
		.filter((joint) => joint.kind === "splice" && wiresAtJoint(circuit.loom, joint.id).length > 1)
		.map((joint) => sizeSplice(circuit, joint));
}

/** Wires shared out to the two sides of a splice so that both are about as thick: each to the thinner side. */
function balanced(diameters: readonly number[]): [number[], number[]] {
	const sides: [number[], number[]] = [[], []];
	const area = (side: readonly number[]) => side.reduce((sum, mm) => sum + mm * mm, 0);
	for (const mm of diameters) sides[area(sides[0]) <= area(sides[1]) ? 0 : 1].push(mm);
	return sides;
}

function sizeSplice({ loom }: Circuit, joint: Joint): SpliceSize {
	const wires = [...wiresAtJoint(loom, joint.id)].sort((x, y) => y.mm2 - x.mm2);
	const sizes = wires.map((wire) => wire.mm2);
	const thinnest = sizes.at(-1)!;
	const diameters = sizes.map((mm2) => outsideDiameter(mm2)?.value ?? Number.NaN);
	const sides = balanced(diameters);
	const butt = wires.length === 2;
	// In a butt barrel each wire has its half to itself.
	const mm2 = butt ? sizes[0]! : sizes.reduce((sum, size) => sum + size, 0);
	const wet = wires.some((wire) =>
		[wire.from, wire.to].some((end) => {
			const contact = loom.contacts.get(endName(end));
			return contact !== undefined && loom.parts.get(contact.connector)?.marks.includes("wet");
		}),
	);
	return {
		...{
			splice: joint.id,
			wires: wires.map((wire) => wire.id),
			kind: butt ? "butt crimp" : "parallel crimp",
			mm2,
		},
		...{ barrelMm2: spliceBarrel(mm2), sleeveMm: sleeveFor(sides) },
		...{ stripMm: stripLength(thinnest), pullNewtons: pullForce(thinnest) },
		wet: wet || joint.marks.includes("wet"),
	};
}
