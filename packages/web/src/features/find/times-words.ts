/** How strongly one thing that was seen speaks for or against a fault, against a sound car. */
export function timesWords(times: number): string {
	if (!(times > 0)) return "speaks strongly against it";
	const factor = times >= 1 ? times : 1 / times;
	if (factor < 1.05) return "speaks neither for nor against";
	const number =
		factor >= 1000 ? "more than 1000" : factor >= 10 ? String(Math.round(factor)) : factor.toFixed(1);
	return times >= 1 ? `speaks for it, ${number} times` : `speaks against it, ${number} times`;
}
