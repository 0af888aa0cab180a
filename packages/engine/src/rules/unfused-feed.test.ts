import { expect, test } from "vitest";
import {
	battery,
	benchCircuit,
	connector,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";
import { unfusedFeed } from "./unfused-feed.js";

const lamp = part("E1", "lamp", ["a", "b"], { values: { watts: 21 } });
const fuse = part("F1", "fuse", ["in", "out"], { values: { amps: 10 } });
const key = part("KEY", "switch", ["30", "15", "50"], { positions: "off:; run:30-15; start:30-15,30-50" });
const relay = part("K1", "relay", ["85", "86", "30", "87"]);
const starter = part("ST", "starter", ["30", "50", "31"]);
const ground = [...grounded, wire("W9", "E1.b > G1", 1.5, 1)];

test("a lamp behind a fuse and an open switch is right; without the fuse it is found, in any position", () => {
	const parts = [battery, fuse, key, lamp];
	const run = (first: string) =>
		benchCircuit({
			parts,
			wires: [...ground, wire("W1", first, 2.5), wire("W2", "F1.out > KEY.30"), wire("W3", "KEY.15 > E1.a")],
		});
	expect(unfusedFeed.check(run("BAT.+ > F1.in"))).toEqual([]);
	const [found, ...more] = unfusedFeed.check(run("BAT.+ > KEY.30"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "unfused-feed", severity: "stop" });
	expect(found!.where).toContain("wire W1 (2.5 mm2)");
	expect(found!.path).toEqual(["BAT", "BAT.+", "W1", "KEY.30", "KEY", "KEY.15", "W3", "E1.a", "E1"]);
	expect(found!.cautions.join()).toContain("Disconnect the battery");
});

test("one unfused wire with several loads behind it is one finding, at its start", () => {
	const found = unfusedFeed.check(
		benchCircuit({
			parts: [
				battery,
				key,
				relay,
				lamp,
				connector("C1"),
				unit("ECU", "control unit", { 1: "supply", 2: "ground" }, { connector: "C1" }),
			],
			joints: [joint("G1", "ground"), joint("BAR", "bar"), joint("S1")],
			wires: [
				...ground,
				wire("W0", "BAT.+ > BAR", 25),
				wire("W1", "BAR > S1", 2.5),
				wire("W2", "S1 > K1.30"),
				wire("W3", "K1.87 > E1.a"),
				wire("W4", "S1 > K1.86"),
				wire("W5", "S1 > ECU.1"),
			],
		}),
	);
	expect(found).toHaveLength(1);
	expect(found[0]!.where).toContain("ECU.1 (connector C1, cavity 1)");
	expect(found[0]!.where).toContain("K1.86");
	expect(found[0]!.mend).toContain("bar BAR");
});

test("the heavy starter cable needs no fuse, a thin one does; so does its terminal 50", () => {
	const run = (mm2: number, feed: string) =>
		benchCircuit({
			parts: [battery, starter, key, fuse],
			wires: [
				...grounded,
				wire("W1", "BAT.+ > ST.30", mm2),
				wire("W2", "BAT.+ > F1.in"),
				wire("W3", `${feed} > KEY.30`),
				wire("W4", "KEY.50 > ST.50"),
				wire("W5", "ST.31 > G1", 25),
			],
		});
	expect(unfusedFeed.check(run(25, "F1.out"))).toEqual([]);
	expect(unfusedFeed.check(run(6, "F1.out"))).toHaveLength(1);
	expect(unfusedFeed.check(run(25, "BAT.+"))[0]!.where).toContain("ST.50");
});

test("a generator is a supply of its own", () => {
	const run = (from: string) =>
		benchCircuit({
			parts: [battery, part("GEN", "generator", ["B+", "-"]), fuse, lamp],
			wires: [...ground, wire("W1", "GEN.B+ > F1.in", 16), wire("W2", `${from} > E1.a`)],
		});
	expect(unfusedFeed.check(run("F1.out"))).toEqual([]);
	expect(unfusedFeed.check(run("GEN.B+"))).toHaveLength(1);
});

test("a return to ground through a switch and a signal input are no feeds", () => {
	const found = unfusedFeed.check(
		benchCircuit({
			parts: [
				battery,
				lamp,
				part("S", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
				unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "input pull-down" }),
			],
			wires: [
				...grounded,
				wire("W1", "E1.b > S.1"),
				wire("W2", "S.2 > G1"),
				wire("W3", "BAT.+ > ECU.3", 0.5),
			],
		}),
	);
	expect(found).toEqual([]);
});
