/** How clear a choice is: what its second best would cost more. */
import type { Choice } from "../../server/choosing.js";
import { duration } from "../../shared/words.js";

/** Below so many minutes a choice may as well go by what hands prefer: the shop's own view, no source. */
export const CLOSE_MINUTES = 5;

/** The closest calls first; what has no other way last. */
export const byMargin = (choices: readonly Choice[]): Choice[] =>
	[...choices].sort((one, other) => marginOf(one) - marginOf(other));

const marginOf = ({ second }: Choice): number => second?.moreMinutes ?? Number.POSITIVE_INFINITY;

/** Tenths below ten minutes: `4.2 min`, `51 min`. */
export const minutesWords = (minutes: number): string =>
	minutes < 10 ? `${minutes.toFixed(1)} min` : duration(minutes);
