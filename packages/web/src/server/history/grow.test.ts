import { expect, test } from "vitest";
import type { Entry } from "../types.js";
import { EMPTY, grown, replaced } from "./grow.js";

/** Entries of a chain whose hashes are its letters: `ab` is entry 1 with hash a, entry 2 with hash b after it. */
const chain = (letters: string): Entry[] =>
	[...letters].map((hash, k) => ({
		...{ id: hash, place: k + 1, time: "", stored: "", person: "Kim", account: "", kind: "note" },
		...{ body: {}, previous: letters[k - 1] ?? "", hash },
	}));

const after = (letters: string, place: number, fault: string | null = null) => ({
	entries: chain(letters).slice(place),
	link: letters[place - 1] ?? "",
	fault,
});

test("it grows by what came after, and by nothing", () => {
	const first = grown(EMPTY, after("ab", 0))!;
	expect(first).toEqual({ entries: chain("ab"), fault: null });
	const second = grown(first, after("abcd", 2))!;
	expect(second).toEqual({ entries: chain("abcd"), fault: null });
	expect(grown(second, after("abcd", 4))).toEqual(second);
});

test("another history, or a shorter one, must be asked for whole; what is not in it is told", () => {
	const known = grown(EMPTY, after("abc", 0))!;
	expect(grown(known, after("axyz", 3))).toBeUndefined();
	expect(grown(known, after("ab", 3))).toBeUndefined();
	const { entries, fault } = replaced(known, grown(EMPTY, after("axyz", 0))!);
	expect(entries).toEqual(chain("axyz"));
	expect(fault).toMatch(/from entry 2 on 2 of this tablet's are not in it/);
});

test("a fault the server tells, and links that do not join, show and stay", () => {
	expect(grown(EMPTY, after("ab", 0, "entry 1 is missing"))!.fault).toBe("entry 1 is missing");
	const torn = grown(EMPTY, {
		...after("abc", 0),
		entries: chain("abc").filter(({ place }) => place !== 2),
	})!;
	expect(torn.fault).toBe("entry 3 does not follow the one before it");
	expect(grown(torn, after("abcd", 3))!.fault).toBe(torn.fault);
});
