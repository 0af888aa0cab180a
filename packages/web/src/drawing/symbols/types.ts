/** What a symbol is: where its wires leave it, how large it is, and how it is drawn. Lengths in drawing units (px at scale 1). */
import type { ReactNode } from "react";
import type { SheetNode, SheetPort, Side } from "../sheet/types.js";

/** Where a wire leaves the symbol, from its top left corner. */
export interface Terminal {
	/** Contact id; wire id at a bar; `north` and `south` of other joints and of a loose end. */
	readonly id: string;
	readonly side: Side;
	readonly x: number;
	readonly y: number;
}

export interface Shape {
	readonly width: number;
	readonly height: number;
	readonly terminals: readonly Terminal[];
	/** The layout may put the terminals of a side in another order, `BAR_PITCH` apart, beginning at the left. */
	readonly sliding?: boolean;
}

/** A kind of node's drawing, made of its data alone. */
export interface SymbolDefinition<N extends SheetNode = SheetNode> {
	/** What the symbol shows, in words. */
	readonly title: string;
	shape(node: N): Shape;
	draw(node: N, shape: Shape): ReactNode;
}

/** Length of the stub between a part's body and its wire, where the contact sign is drawn. */
export const STUB = 16;

/** Distance of two wires at a bar. */
export const BAR_PITCH = 34;

export const terminalAt = (port: SheetPort, side: Side, x: number, y: number): Terminal => ({
	id: port.contact,
	side,
	x,
	y,
});
