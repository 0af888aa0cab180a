/**
 * 64-bit hash of a text's UTF-16 code units, low byte first: FNV-1a. G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake,
 * 'The FNV Non-Cryptographic Hash Algorithm', IETF draft. It tells contents apart; it keeps nobody out.
 */

/** The prime is 2^40 + 0x1b3: in words of 16 bits, one shift by 40 and one product. */
const LOW = 0x1b3;

/** 16 hexadecimal digits. */
export function hashBytes(bytes: Iterable<number>): string {
	// 0xcbf29ce484222325, least word first.
	let [a, b, c, d] = [0x2325, 0x8422, 0x9ce4, 0xcbf2];
	for (const byte of bytes) {
		a ^= byte;
		const low = a * LOW;
		const second = b * LOW + (low >>> 16);
		// The shift by 40 adds word a, moved up by 8 bits, to the third, and b with what a lost to the fourth.
		const third = c * LOW + ((a << 8) & 0xffff) + (second >>> 16);
		const fourth = d * LOW + (a >>> 8) + ((b << 8) & 0xffff) + (third >>> 16);
		a = low & 0xffff;
		b = second & 0xffff;
		c = third & 0xffff;
		d = fourth & 0xffff;
	}
	return [d, c, b, a].map((word) => word.toString(16).padStart(4, "0")).join("");
}

export function hashText(text: string): string {
	const bytes = new Uint8Array(2 * text.length);
	for (let k = 0; k < text.length; k++) {
		const unit = text.charCodeAt(k);
		bytes[2 * k] = unit & 0xff;
		bytes[2 * k + 1] = unit >>> 8;
	}
	return hashBytes(bytes);
}
