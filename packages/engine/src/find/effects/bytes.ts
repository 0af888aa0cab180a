/** Effects as bytes for a file: a head, the tables, and a sum that tells a damaged file. */
import { hashBytes } from "./content-hash.js";
import type { Effects } from "./effects.js";

const MAGIC = "LWEF1\n";
/** Bytes of the sum at the end. */
const SUM = 16;

/** Bytes that are no effects, or no longer. */
export class EffectsError extends Error {
	constructor(message: string) {
		super(message);
		this.name = "EffectsError";
	}
}

export function effectsToBytes({ key, rows, sound, first, row, chance }: Effects): Uint8Array {
	const head = ascii(
		`${MAGIC}${JSON.stringify({ key, rows, patterns: first.length - 1, differences: row.length })}\n`,
	);
	const parts = [head, littleEndian(sound), littleEndian(first), littleEndian(row), littleEndian(chance)];
	const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, SUM));
	let at = 0;
	for (const part of parts) {
		bytes.set(part, at);
		at += part.length;
	}
	bytes.set(ascii(hashBytes(bytes.subarray(0, at))), at);
	return bytes;
}

/** @throws EffectsError where the bytes are damaged or of another form */
export function effectsFromBytes(bytes: Uint8Array): Effects {
	const body = bytes.subarray(0, Math.max(0, bytes.length - SUM));
	const text = (part: Uint8Array) => Array.from(part, (byte) => String.fromCharCode(byte)).join("");
	if (text(body.subarray(0, MAGIC.length)) !== MAGIC)
		throw new EffectsError("not a file of effects; wanted: one written by this program");
	if (text(bytes.subarray(body.length)) !== hashBytes(body))
		throw new EffectsError("the file of effects is damaged; wanted: the bytes as they were written");
	const end = body.indexOf(10, MAGIC.length);
	const { key, rows, patterns, differences } = JSON.parse(text(body.subarray(MAGIC.length, end))) as {
		key: string;
		rows: string[];
		patterns: number;
		differences: number;
	};
	const view = new DataView(body.buffer, body.byteOffset, body.length);
	let at = end + 1;
	const take = <A>(array: A & { length: number }, size: number, get: (at: number) => number): A => {
		for (let k = 0; k < array.length; k++, at += size) (array as unknown as number[])[k] = get(at);
		return array;
	};
	const float = (k: number) => view.getFloat32(k, true);
	return {
		...{ key, rows },
		sound: take(new Float32Array(rows.length), 4, float),
		first: take(new Uint32Array(patterns + 1), 4, (k) => view.getUint32(k, true)),
		row: take(new Uint16Array(differences), 2, (k) => view.getUint16(k, true)),
		chance: take(new Float32Array(differences), 4, float),
	};
}

/** Letters beyond ASCII can only stand inside the strings of the JSON, where an escape says them. */
function ascii(text: string): Uint8Array {
	const plain = text.replace(
		/[^\n -~]/g,
		(letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`,
	);
	return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
}

/** The same bytes on every machine. */
function littleEndian(numbers: Float32Array | Uint32Array | Uint16Array): Uint8Array {
	const bytes = new Uint8Array(numbers.byteLength);
	const view = new DataView(bytes.buffer);
	const size = numbers.BYTES_PER_ELEMENT;
	for (let k = 0; k < numbers.length; k++) {
		const value = numbers[k]!;
		if (numbers instanceof Float32Array) view.setFloat32(k * size, value, true);
		else if (numbers instanceof Uint32Array) view.setUint32(k * size, value, true);
		else view.setUint16(k * size, value, true);
	}
	return bytes;
}
