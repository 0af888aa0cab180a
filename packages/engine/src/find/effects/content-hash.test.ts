import { expect, it } from "vitest";
import { hashBytes, hashText } from "./content-hash.js";

const ascii = (text: string) => [...text].map((letter) => letter.charCodeAt(0));

it.each([
	// Test vectors of the authors' draft: from memory.
	["", "cbf29ce484222325"],
	["a", "af63dc4c8601ec8c"],
	["foobar", "85944171f73967e8"],
])("FNV-1a of '%s'", (text, expected) => {
	expect(hashBytes(ascii(text))).toBe(expected);
});

it("agrees with whole numbers of any size", () => {
	const slow = (bytes: number[]) => {
		let hash = 0xcbf29ce484222325n;
		for (const byte of bytes) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
		return hash.toString(16).padStart(16, "0");
	};
	const bytes = Array.from({ length: 3000 }, (_, k) => (k * k + 7 * k) % 256);
	for (const length of [1, 2, 17, 3000])
		expect(hashBytes(bytes.slice(0, length))).toBe(slow(bytes.slice(0, length)));
});

it("one letter more or less is another content", () => {
	const texts = ["open:wire:W1", "open:wire:W2", "open:wire:W", "öpen:wire:W1", ""];
	expect(new Set(texts.map(hashText)).size).toBe(texts.length);
});
