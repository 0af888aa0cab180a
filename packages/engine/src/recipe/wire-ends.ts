import { endName, type Wire, type WireEnd } from "../loom/index.js";
import type { Side } from "./touched.js";

const sides = ["from", "to"] as const;

/** A bare end, as the side cutters leave it. */
export const bare: WireEnd = { at: "loose", insulated: false };

export const looseSides = (wire: Wire): Side[] => sides.filter((side) => wire[side].at === "loose");

export const isStowed = (end: WireEnd): boolean => end.at === "loose" && end.insulated;

/** Which ends of a wire are at a place: both, for a link that loops back. */
export const sidesAt = (wire: Wire, at: "contact" | "joint", id: string): Side[] =>
	sides.filter((side) => wire[side].at === at && endName(wire[side]) === id);

/** Lengths are kept to the micrometre, so that the halves of a cut do not carry rounding noise. */
export const tidyMetres = (metres: number): number => Math.round(metres * 1e6) / 1e6;

/** A wire's end in words. */
export function endText(end: WireEnd): string {
	if (end.at !== "loose") return endName(end);
	return end.insulated ? "a stowed end" : "a bare end";
}
