import { deviceKinds } from "@loomwright/engine";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import type { SheetNode, SheetPart, SheetPort, Side } from "../sheet/types.js";
import { symbolOf } from "./index.js";

const port = (role: string, side: Side): SheetPort => ({
	contact: `P.${role}`,
	name: role,
	role,
	label: "",
	connector: side === "north" ? "X1" : "",
	cavity: "1",
	side,
});

function partOf(kind: string, sides: readonly Side[]): SheetPart {
	const known = deviceKinds.get(kind)!.roles;
	const roles = known === "any" ? ["1", "2", "3"] : known.slice(0, 5);
	const ports = roles.map((role, k) => port(role, sides[k % sides.length]!));
	const positions = [
		{ name: "off", joins: [] },
		{ name: "on", joins: [["1", "2"] as const, ["1", "3"] as const] },
	];
	return {
		what: "part",
		id: "P",
		kind,
		label: "a label of some length",
		place: "",
		marks: [],
		ports,
		positions,
		state: "on",
	};
}

const SIDES: readonly (readonly Side[])[] = [["north", "south"], ["south", "north"], ["north"], ["south"]];

test.each([...deviceKinds.keys()])("%s: each pin has one terminal, on the edge of the symbol", (kind) => {
	for (const sides of SIDES) {
		const part = partOf(kind, sides);
		const symbol = symbolOf(part);
		const shape = symbol.shape(part);
		expect(shape.terminals.map(({ id }) => id).sort()).toEqual(
			part.ports.map(({ contact }) => contact).sort(),
		);
		for (const { side, x, y } of shape.terminals) {
			expect(y).toBe(side === "north" ? 0 : shape.height);
			expect(x).toBeGreaterThan(0);
			expect(x).toBeLessThan(shape.width);
		}
		const spots = shape.terminals.map(({ x, y }) => `${x} ${y}`);
		expect(new Set(spots).size).toBe(spots.length);
		const drawn = renderToStaticMarkup(symbol.draw(part, shape));
		for (const { contact } of part.ports) expect(drawn).toContain(`data-contact="${contact}"`);
		expect(drawn).not.toMatch(/NaN|undefined/);
	}
});

const OTHERS: readonly SheetNode[] = [
	{
		what: "pair",
		id: "X/1",
		connector: "X",
		label: "",
		cavity: "1",
		ports: [port("a", "north"), port("b", "south")],
		mated: true,
	},
	{
		what: "joint",
		id: "SP",
		kind: "splice",
		label: "",
		place: "",
		above: ["W1"],
		below: ["W2", "W3"],
		undrawn: 2,
	},
	{ what: "joint", id: "G", kind: "ground", label: "arch", place: "", above: ["W1"], below: [], undrawn: 0 },
	{
		what: "joint",
		id: "BAR",
		kind: "bar",
		label: "rail",
		place: "",
		above: ["W1"],
		below: ["W2", "W3"],
		undrawn: 0,
	},
	{ what: "loose", id: "W@to", insulated: false },
];

test.each(OTHERS)("$what $id is drawn", (node) => {
	const symbol = symbolOf(node);
	const drawn = renderToStaticMarkup(symbol.draw(node, symbol.shape(node)));
	expect(drawn.length).toBeGreaterThan(80);
	expect(drawn).not.toMatch(/NaN|undefined/);
});

test("a switch is drawn in its position, a relay as its coil holds it", () => {
	const draw = (part: SheetPart) =>
		renderToStaticMarkup(symbolOf(part).draw(part, symbolOf(part).shape(part)));
	const button = partOf("switch", ["north", "south"]);
	expect(draw({ ...button, state: "off" })).not.toBe(draw(button));
	const relay = partOf("relay", ["north", "south"]);
	expect(draw({ ...relay, state: "pulled in" })).not.toBe(draw({ ...relay, state: "in" }));
});
