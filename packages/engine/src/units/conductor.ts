import { MOST_OHM_MM2_PER_METRE } from "./conductor-table.js";

/** Metal of a conductor. Tinned copper is copper: tin adds under 3 % to the standard's maximum. */
export type Metal = "copper" | "aluminium";

interface MetalConstants {
	/** Resistivity at 20 degrees C in ohm mm2/m. */
	readonly rho: number;
	/** Temperature coefficient of resistance at 20 degrees C, per kelvin. */
	readonly alpha: number;
}

/**
 * Copper: annealed standard of IEC 60028, exactly 1/58 (from memory); alpha 0.00393 as IEC 60287-1-1 table 1.
 * Aluminium: as IEC 60287-1-1 table 1. reference/electrical/material-constants.csv.
 */
export const METALS: Readonly<Record<Metal, MetalConstants>> = {
	copper: { rho: 1 / 58, alpha: 0.00393 },
	aluminium: { rho: 0.02826, alpha: 0.00403 },
};

/** Resistance relative to that at 20 degrees C: 1 + alpha (t - 20). */
export function temperatureFactor(celsius: number, metal: Metal = "copper"): number {
	return 1 + METALS[metal].alpha * (celsius - 20);
}

/** Ohms per metre of solid metal of this cross-section: rho / A, at a temperature. */
export function solidOhmsPerMetre(mm2: number, celsius = 20, metal: Metal = "copper"): number {
	return (METALS[metal].rho / mm2) * temperatureFactor(celsius, metal);
}

/** The allowed maximum over solid copper, by size: between the table's sizes along log(mm2), beyond its ends the last. */
export function mostOverSolid(mm2: number): number {
	let [lowSize, low] = MOST_OHM_MM2_PER_METRE[0]!;
	let most = low;
	for (const [size, high] of MOST_OHM_MM2_PER_METRE) {
		if (mm2 <= lowSize) break;
		const share = Math.min(1, Math.log(mm2 / lowSize) / Math.log(size / lowSize) || 0);
		most = low + share * (high - low);
		[lowSize, low] = [size, high];
	}
	return most / METALS.copper.rho;
}

/** A resistance as it is to be expected, and how far the true one may lie off it, as a share: 0.04 is 4 %. */
export interface SpreadOhms {
	readonly ohms: number;
	readonly spread: number;
}

/** What a wire's resistance comes of. `celsius` is the conductor's own temperature. */
export interface WireConductor {
	readonly mm2: number;
	readonly metres: number;
	readonly celsius?: number;
	readonly metal?: Metal;
}

/**
 * Resistance of a stranded automotive wire, end to end, without its terminals.
 *
 * A conductor of nominal size lies between solid metal of that cross-section and the standard's
 * maximum (strands are laid in a helix, drawn within a tolerance and perhaps tinned). The middle is
 * taken as nominal and half the width as spread: about 1.04 x solid, +-4 %. The spread is a limit,
 * not a standard deviation. mm2 and metres above zero.
 */
export function wireOhms(wire: WireConductor): SpreadOhms {
	const most = mostOverSolid(wire.mm2);
	const solid = solidOhmsPerMetre(wire.mm2, wire.celsius, wire.metal) * wire.metres;
	return { ohms: (solid * (1 + most)) / 2, spread: (most - 1) / (most + 1) };
}
