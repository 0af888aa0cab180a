/** The number off a meter's display, with a point or a comma; undefined where it is none. */
export function parseShown(text: string): number | undefined {
	const plain = text.trim().replace(",", ".").replace(/^[−–]/, "-");
	return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}
