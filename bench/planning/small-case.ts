/** Random small cars with some circuits wanted: few enough options that all of them can be tried. */
import type { Random } from "../finding/random.js";

/** Text by file name, as `readTables` and `readPlanTables` take it. */
export type Files = Readonly<Record<string, string>>;

const csv = (head: string, rows: readonly (readonly (string | number)[])[]): string =>
	[head, ...rows.map((row) => row.join(","))].join("\n");

/**
 * Four places in a row with a wall after the second. A unit with pins at each end; two devices that go, whose
 * leads are left loose; an in-line connector with a spare cavity; a new device with three pins.
 */
export function smallCase({ uniform }: Random): Files {
	const below = (n: number) => Math.floor(uniform() * n);
	const pick = <T>(list: readonly T[]): T => list[below(list.length)]!;
	const chance = (share: number) => uniform() < share;
	const sizes = [0.5, 0.75, 1.5];
	const parts = [
		["BAT", "battery", "p0"],
		["F1", "fuse", "p0"],
		["UA", "control unit", "p0"],
		["XA", "connector", "p0"],
		["UB", "control unit", "p3"],
		["XB", "connector", "p3"],
		["XL", "connector", "p1"],
		["OLD1", "switch", pick(["p1", "p2", "p3"])],
		["OLD2", "switch", pick(["p0", "p2"])],
	].map(([part, kind, place]) => [part!, kind!, place!, kind === "fuse" ? "amps=10" : ""]);
	const pins = ["UA", "UB"].flatMap((unit) =>
		["1", "2", "3", "4"].map((pin) => [
			`${unit}.${pin}`,
			unit,
			unit === "UA" ? "XA" : "XB",
			pin,
			"input pull-up",
		]),
	);
	const contacts = [
		["BAT.+", "BAT", "", "", "+"],
		["BAT.-", "BAT", "", "", "-"],
		["F1.in", "F1", "", "", "in"],
		["F1.out", "F1", "", "", "out"],
		...pins,
		...["1", "2"].flatMap((cavity) => [
			[`XL.${cavity}a`, "XL", "XL", cavity, "a"],
			[`XL.${cavity}b`, "XL", "XL", cavity, "b"],
		]),
		...["OLD1", "OLD2"].flatMap((part) => ["1", "2"].map((pin) => [`${part}.${pin}`, part, "", "", pin])),
	];
	const wire = (name: string, from: string, to: string, pair = "") => [
		name,
		from,
		to,
		pick(sizes),
		`${(2 + below(20)) / 10} m`,
		pair,
	];
	const paired = chance(0.5) ? "TP" : "";
	const wires = [
		["WB", "BAT.+", "F1.in", 4, "0.3 m", ""],
		["WG", "BAT.-", "G1", 4, "0.3 m", ""],
		wire("W1", "UA.1", "XL.1a"),
		wire("W2", "XL.1b", "OLD1.1"),
		wire("W3", pick(["UB.1", "F1.out", "G1", "S1"]), "OLD1.2"),
		wire("W4", pick(["UA.2", "F1.out", "UB.2"]), "OLD2.1", paired),
		wire("W5", pick(["S1", "G2"]), "OLD2.2", paired),
		...(chance(0.7) ? [wire("W6", "S1", "UB.3")] : []),
		...(chance(0.5) ? [wire("W7", "S1", "UA.3")] : []),
	];
	const line = wires.filter(([name]) => name === "W6" || name === "W7").length === 2;
	const ends = ["UA.1", "UA.2", "UA.3", "UA.4", "UB.1", "UB.2", "UB.3", "UB.4"];
	const free = [...ends];
	const take = () => free.splice(below(free.length), 1)[0]!;
	const count = 2 + below(2);
	const together = chance(0.25) ? "P" : "";
	const targets = Array.from({ length: count }, (_, k) => {
		const to = chance(0.6) ? take() : pick(["ground", "permanent feed", "S1"]);
		const joints = chance(0.1) ? below(3) : "";
		return [`c${k + 1}`, "connect", "", `NEW.${k + 1}`, to, pick(sizes), joints, k < 2 ? together : ""];
	});
	const gone = [chance(0.9) ? "OLD1" : "", chance(0.9) ? "OLD2" : ""].filter((part) => part !== "");
	return {
		"parts.csv": csv("part,kind,place,values", parts),
		"contacts.csv": csv("contact,part,connector,cavity,role", contacts),
		"joints.csv": csv("joint,kind,place", [
			["S1", "splice", pick(["p0", "p2", "p3"])],
			["G1", "ground", "p0"],
			["G2", "ground", "p2"],
		]),
		"wires.csv": csv("wire,from,to,size,length,pair", wires),
		"conditions.csv": csv("condition,subject,state", [["on", "BAT", "on"]]),
		"new-parts.csv": csv("part,kind,place", [
			["XN", "connector", "p2"],
			["NEW", "switch", "p2"],
		]),
		"new-contacts.csv": csv(
			"contact,part,connector,cavity,role",
			["1", "2", "3"].map((pin) => [`NEW.${pin}`, "NEW", "XN", pin, pin]),
		),
		"new-joints.csv": csv("joint,kind,place", [["G3", "ground", "p3"]]),
		"targets.csv": csv("target,want,part,from,to,size,joints,pair", [
			...gone.map((part) => [`out-${part}`, "remove", part, "", "", "", "", ""]),
			["xn", "fit", "XN", "", "", "", "", ""],
			["new", "fit", "NEW", "", "", "", "", ""],
			["g3", "may fit", "G3", "", "", "", "", ""],
			...(line && chance(0.7) ? [["apart", "separate", "", "UA.3", "UB.3", "", "", ""]] : []),
			...targets,
		]),
		"places.csv": csv("place,zone,near,metres", [
			["p0", "a", "", ""],
			["p1", "a", "p0", `${(1 + below(10)) / 10} m`],
			["p2", "b", "p1", `${(1 + below(10)) / 10} m`],
			["p3", "b", "p2", `${(1 + below(10)) / 10} m`],
		]),
		"costs.csv": csv("item,zone,minutes", [
			["passage", "a/b", below(40)],
			["splice", "", 1 + below(8)],
			["wire", "", 1 + below(20)],
			["joint risk", "b", below(20)],
			["open", "", below(6)],
			["overlay loom", "", 100_000],
			["new loom", "", 100_000],
		]),
	};
}
