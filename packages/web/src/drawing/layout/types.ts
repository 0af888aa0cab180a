/** A drawing with everything in its place. Lengths in drawing units. */
import type { SheetNode, SheetWire } from "../sheet/types.js";
import type { Shape } from "../symbols/index.js";

export interface Point {
	readonly x: number;
	readonly y: number;
}

export interface PlacedNode {
	readonly node: SheetNode;
	readonly shape: Shape;
	readonly x: number;
	readonly y: number;
}

export interface PlacedWire {
	readonly wire: SheetWire;
	/** From the upper end to the lower, corners between. */
	readonly points: readonly Point[];
	readonly text: string;
	/** Top left corner of the text. */
	readonly textAt: Point | undefined;
}

export interface PlacedSheet {
	readonly width: number;
	readonly height: number;
	readonly nodes: readonly PlacedNode[];
	readonly wires: readonly PlacedWire[];
}
