/** A number typed key by key, as it stands on the pad. */

const MOST_KEYS = 9;

/** The text after a key: a digit, `.`, `±` or `⌫`. Keys that make no number are passed over. */
export function typed(text: string, key: string): string {
	if (key === "⌫") return text.slice(0, -1);
	if (key === "±") return text.startsWith("-") ? text.slice(1) : `-${text}`;
	if (text.length >= MOST_KEYS || (key === "." && text.includes("."))) return text;
	return `${text}${key}`;
}
