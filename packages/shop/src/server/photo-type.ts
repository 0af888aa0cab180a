/** What a file is, by its first bytes; its name and what the sender calls it do not count. */

/** JPEG: ITU-T T.81 annex B; PNG: ISO/IEC 15948, 5.2; WebP: RFC 9649, 2.4. */
const SIGNATURES: readonly { readonly type: string; readonly fits: (bytes: Buffer) => boolean }[] = [
	{ type: "image/jpeg", fits: (bytes) => begins(bytes, [0xff, 0xd8, 0xff]) && ends(bytes, [0xff, 0xd9]) },
	{
		type: "image/png",
		fits: (bytes) =>
			begins(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]) &&
			// The last chunk is IEND, always these eight bytes of type and check sum.
			ends(bytes, [0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82]),
	},
	{
		type: "image/webp",
		fits: (bytes) =>
			bytes.toString("latin1", 0, 4) === "RIFF" &&
			bytes.toString("latin1", 8, 12) === "WEBP" &&
			bytes.length === bytes.readUInt32LE(4) + 8,
	},
];

/** The type of a whole JPEG, PNG or WebP picture; undefined for anything else, and for one cut short. */
export const photoType = (bytes: Buffer): string | undefined =>
	bytes.length < 16 ? undefined : SIGNATURES.find(({ fits }) => fits(bytes))?.type;

const begins = (bytes: Buffer, with_: readonly number[]): boolean =>
	with_.every((byte, k) => bytes[k] === byte);

/** Some cameras pad the end with zeros. */
function ends(bytes: Buffer, with_: readonly number[]): boolean {
	let last = bytes.length;
	while (last > 0 && bytes[last - 1] === 0) last -= 1;
	return with_.every((byte, k) => bytes[last - with_.length + k] === byte);
}
