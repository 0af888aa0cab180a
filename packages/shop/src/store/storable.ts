/**
 * Text that every database gives back as it took it. NUL PostgreSQL does not take (manual, 8.3); a lone surrogate
 * has no UTF-8 (RFC 3629, section 3): it would come back as another sign, and the hash of its entry not fit.
 */
import { Unstorable } from "./failure.js";

const UNSTORABLE = /[\0\p{Cs}]/u;

/**
 * Looks through texts, lists, and objects with their keys. Cost O(size).
 * @throws Unstorable
 */
export function checkStorable(value: unknown): void {
	if (typeof value === "string" && UNSTORABLE.test(value))
		throw new Unstorable("the text has a sign that cannot be stored", "Leave out control characters.");
	if (value === null || typeof value !== "object" || value instanceof Uint8Array) return;
	// A list of its own instead of recursion: what is sent may be nested as deep as its size lets it.
	const open: unknown[] = [value];
	for (let inner = open.pop(); inner !== undefined; inner = open.pop())
		for (const [key, part] of Object.entries(inner as object)) {
			checkStorable(key);
			if (part !== null && typeof part === "object") open.push(part);
			else checkStorable(part);
		}
}
