/** The sparse solver against general-purpose libraries. */
import { compare } from "../linalg/compare.js";

export const run = compare;
