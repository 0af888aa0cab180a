/** The simulated searches of the demo car, half of them in each of two processes. */
import { type Half, half } from "../finding/cases.js";

export const first = (): Half => half(1);
export const second = (): Half => half(2);
