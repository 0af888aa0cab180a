import {
	mkdirSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	truncateSync,
	utimesSync,
	writeFileSync,
} from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { KeptFolder } from "./folder.js";

const bytes = (length: number, of = 7) => new Uint8Array(length).fill(of);

test("what is kept comes back, what is not is undefined", () => {
	const kept = new KeptFolder(join(temporaryFolder(), "deep", "down"));
	expect(kept.read("one")).toBeUndefined();
	expect(kept.write("one", bytes(5))).toBe(true);
	expect([...kept.read("one")!]).toEqual([7, 7, 7, 7, 7]);
	expect(kept.write("one", bytes(0))).toBe(true);
	expect(kept.read("one")).toHaveLength(0);
	expect(readdirSync(kept.folder)).toEqual(["one.kept"]);
});

test("any byte changed, left out or added: as if it were not there", () => {
	const kept = new KeptFolder(temporaryFolder());
	const file = join(kept.folder, "one.kept");
	kept.write("one", bytes(200));
	const whole = readFileSync(file);
	const changed = fc.tuple(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 })).map(([at, by]) => {
		const copy = Uint8Array.from(whole);
		copy[at] = copy[at]! ^ by;
		return copy;
	});
	const cut = fc.nat(whole.length - 1).map((length) => whole.subarray(0, length));
	const longer = fc.uint8Array({ minLength: 1, maxLength: 40 }).map((more) => Buffer.concat([whole, more]));
	fc.assert(
		fc.property(fc.oneof(changed, cut, longer), (damaged) => {
			writeFileSync(file, damaged);
			expect(kept.read("one")).toBeUndefined();
		}),
		{ seed: 71, numRuns: 100 },
	);
	expect(kept.write("one", bytes(3))).toBe(true);
	expect(kept.read("one")).toHaveLength(3);
});

test("together they stay below the bound; those not used for longest give way", () => {
	const kept = new KeptFolder(temporaryFolder(), 3 * 1032);
	for (const [k, name] of ["a", "b", "c"].entries()) {
		kept.write(name, bytes(1000));
		const then = new Date(2020, 1, 1 + k);
		utimesSync(join(kept.folder, `${name}.kept`), then, then);
	}
	kept.read("a");
	kept.write("d", bytes(1000));
	expect(readdirSync(kept.folder).sort()).toEqual(["a.kept", "c.kept", "d.kept"]);
	// Larger than all there may be: not kept, and no error.
	kept.write("e", bytes(4000));
	expect(kept.read("e")).toBeUndefined();
	const sizes = readdirSync(kept.folder).map((name) => statSync(join(kept.folder, name)).size);
	expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(kept.mostBytes);
});

test("what a program that was ended left half written is cleared, what another is writing is not", () => {
	const kept = new KeptFolder(temporaryFolder());
	for (const name of ["old.kept.1.new", "now.kept.2.new"]) writeFileSync(join(kept.folder, name), "half");
	utimesSync(join(kept.folder, "old.kept.1.new"), new Date(2020, 1, 1), new Date(2020, 1, 1));
	kept.write("one", bytes(3));
	expect(readdirSync(kept.folder).sort()).toEqual(["now.kept.2.new", "one.kept"]);
});

test("where nothing can be kept, it says so and does not fail", () => {
	const place = temporaryFolder();
	writeFileSync(join(place, "file"), "");
	expect(new KeptFolder(join(place, "file")).write("one", bytes(3))).toBe(false);
	expect(new KeptFolder(join(place, "file")).read("one")).toBeUndefined();
	const kept = new KeptFolder(place);
	mkdirSync(join(place, "one.kept"));
	expect(kept.write("one", bytes(3))).toBe(false);
	expect(kept.read("one")).toBeUndefined();
	rmSync(join(place, "one.kept"), { recursive: true });
	expect(kept.write("one", bytes(3))).toBe(true);
	truncateSync(join(place, "one.kept"), 4);
	expect(kept.read("one")).toBeUndefined();
});
