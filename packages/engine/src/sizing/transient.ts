/**
 * How warm a conductor gets when it carries a current for a while: for holding it against the time its fuse takes.
 *
 * Per metre, with u the rise over the air:  c A du/dt = I^2 r (1 + alpha (air - 20) + alpha u) - h u,  linear in u:
 * u(t) = (p / q) (e^(q t) - 1),  p = I^2 r (1 + alpha (air - 20)) / (c A),  q = (I^2 r alpha - h) / (c A).
 * h is what the rated current of the size gives off (units/ampacity.ts). For short times nothing is given off and the
 * law becomes the adiabatic one, I^2 t = (k A)^2, of IEC 60949 (tested against its k).
 */
import { RATED } from "../units/ampacity.js";
import { METALS, temperatureFactor } from "../units/conductor.js";
import { ratedAmps } from "../units/index.js";

/** Joules per kelvin and cubic metre: reference/electrical/copper-heat.csv, row 001 (from memory, IEC 60949). */
export const COPPER_HEAT = 3.45e6;

/**
 * Degrees C of a copper conductor that stood at air temperature and carries `amps` for `seconds`, alone in free air.
 * Infinity where it would never come to rest and the time is long.
 * @param mm2 above zero
 */
export function celsiusAfter(mm2: number, amps: number, seconds: number, air: number): number {
	const heat = COPPER_HEAT * mm2 * 1e-6;
	const ohms = METALS.copper.rho / mm2;
	const loss =
		(ratedAmps(mm2) ** 2 * ohms * temperatureFactor(RATED.conductor)) / (RATED.conductor - RATED.air);
	const p = (amps ** 2 * ohms * temperatureFactor(air)) / heat;
	const q = (amps ** 2 * ohms * METALS.copper.alpha - loss) / heat;
	return air + (q === 0 ? p * seconds : (p / q) * Math.expm1(q * seconds));
}
