/** What comes of reading a value out of a cell: the value, or what is wrong and what would be right. */
export type Parsed<T> =
	| { readonly ok: true; readonly value: T }
	| { readonly ok: false; readonly problem: string; readonly wanted: string };

/** A value that could be read. */
export function good<T>(value: T): Parsed<T> {
	return { ok: true, value };
}

/** A value that could not: `problem` quotes what stands there, `wanted` says what would be right. */
export function bad(problem: string, wanted: string): Parsed<never> {
	return { ok: false, problem, wanted };
}
