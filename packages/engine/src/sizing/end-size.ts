/** What is crimped to the end of a wire: terminal, strip length, pull to test to, seal. */
import type { Circuit } from "../circuit/index.js";
import { housingOf, type Wire, type WireEnd } from "../loom/index.js";
import { outsideDiameter } from "./cover.js";
import { pullForce, pullForceAwg, type Sourced, stripLength } from "./crimp.js";

export interface EndSize {
	/** Contact or joint. */
	readonly at: string;
	/** In words. */
	readonly terminal: string;
	readonly stripMm: Sourced | undefined;
	readonly pullNewtons: Sourced | undefined;
	/** By the table of American gauges, for a wire bought so. */
	readonly pullNewtonsAwg: Sourced | undefined;
	/** Outside diameter in mm that the seal must fit; undefined where none is needed. */
	readonly sealMm: Sourced | undefined;
}

/** Largest current in amperes and blade width in mm: terminal-practice.csv 011 to 013 (common practice, no source). */
const BLADES: readonly (readonly [upTo: number, mm: number])[] = [
	[15, 2.8],
	[30, 6.3],
	[60, 9.5],
];

/** @returns undefined for a loose end, and at a splice, whose barrel is its own (splice-size.ts) */
export function sizeEnd(circuit: Circuit, wire: Wire, end: WireEnd, amps: number): EndSize | undefined {
	const { loom } = circuit;
	if (end.at === "loose") return undefined;
	const joint = end.at === "joint" ? loom.joints.get(end.joint) : undefined;
	if (joint?.kind === "splice") return undefined;
	const contact = end.at === "contact" ? loom.contacts.get(end.contact) : undefined;
	const housing = contact ? housingOf(loom, contact) : "";
	const wet = [housing, contact?.part ?? ""].some((part) => loom.parts.get(part)?.marks.includes("wet"));
	return {
		at: contact?.id ?? joint?.id ?? "",
		terminal: terminalText(circuit, contact?.id ?? "", amps),
		stripMm: stripLength(wire.mm2),
		pullNewtons: pullForce(wire.mm2),
		pullNewtonsAwg: pullForceAwg(wire.mm2),
		sealMm: wet && housing !== "" ? outsideDiameter(wire.mm2) : undefined,
	};
}

function terminalText({ loom }: Circuit, contact: string, amps: number): string {
	const pin = loom.contacts.get(contact);
	if (pin === undefined) return "ring terminal";
	const housing = loom.parts.get(housingOf(loom, pin));
	if (housing !== undefined) {
		const { least_mm2: least = 0, most_mm2: most = 0 } = housing.values;
		const range = most > 0 ? `, for ${least} to ${most} mm2` : "";
		return `crimp terminal of ${housing.id}${pin.cavity && `, cavity ${pin.cavity}`}${range}`;
	}
	const kind = loom.parts.get(pin.part)?.kind ?? "";
	if (["battery", "generator", "starter"].includes(kind)) return "ring terminal";
	const rated = Math.max(amps, loom.parts.get(pin.part)?.values.amps ?? 0);
	const blade = BLADES.find(([upTo]) => rated <= upTo)?.[1];
	return blade === undefined ? "ring terminal" : `blade receptacle ${blade} mm`;
}
