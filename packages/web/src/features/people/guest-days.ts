/** Days as a date field has them, `2030-01-31`, in the tablet's own time zone. */

const two = (n: number) => String(n).padStart(2, "0");

export function dayAfter(now: Date, days: number): string {
	const day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + days);
	return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** The last second of that day, ISO 8601, UTC; undefined for what is no day. */
export function endOfDay(day: string): string | undefined {
	const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day)?.slice(1).map(Number);
	if (!parts) return undefined;
	const [year, month, date] = parts as [number, number, number];
	const end = new Date(year, month - 1, date, 23, 59, 59);
	return end.getMonth() === month - 1 ? end.toISOString() : undefined;
}
