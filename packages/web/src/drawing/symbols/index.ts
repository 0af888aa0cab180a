/**
 * Which symbol draws which node. A new kind of device gets its file and its line here; without one it is a box
 * with pins. The symbol numbers of IEC 60617 in these files are from memory.
 */
import type { SheetNode, SheetPart } from "../sheet/types.js";
import { battery } from "./battery.js";
import { coil } from "./coil.js";
import { contactPair } from "./contact-pair.js";
import { diode, led } from "./diode.js";
import { fuse } from "./fuse.js";
import { generator } from "./generator.js";
import { heater } from "./heater.js";
import { igniter } from "./igniter.js";
import { bar, ground, splice } from "./joints.js";
import { lamp } from "./lamp.js";
import { looseEnd } from "./loose-end.js";
import { motor } from "./motor.js";
import { potentiometer } from "./potentiometer.js";
import { relay } from "./relay.js";
import { busEnd, resistor } from "./resistor.js";
import { starter } from "./starter.js";
import { switchSymbol } from "./switch.js";
import { thermistor } from "./thermistor.js";
import type { SymbolDefinition } from "./types.js";
import { unit } from "./unit.js";

const TWO_PINS: Readonly<Record<string, SymbolDefinition<SheetPart>>> = {
	battery,
	"bus end": busEnd,
	coil,
	"coil sensor": coil,
	diode,
	fuse,
	generator,
	heater,
	igniter,
	injector: coil,
	lamp,
	led,
	motor,
	resistor,
	thermistor,
};

const MORE_PINS: Readonly<Record<string, SymbolDefinition<SheetPart>>> = {
	potentiometer,
	relay,
	starter,
	switch: switchSymbol,
};

export function symbolOf(node: SheetNode): SymbolDefinition {
	return definitionOf(node) as SymbolDefinition;
}

function definitionOf(node: SheetNode) {
	if (node.what === "pair") return contactPair;
	if (node.what === "loose") return looseEnd;
	if (node.what === "joint") return { splice, ground, bar }[node.kind];
	const two = node.ports.length === 2 ? TWO_PINS[node.kind] : undefined;
	return two ?? (node.ports.length > 0 ? MORE_PINS[node.kind] : undefined) ?? unit;
}

export type { Shape, SymbolDefinition, Terminal } from "./types.js";
