/** Parts with two pins: standing between supply and ground, or hanging from (standing on) two wires of one side. */
import type { ReactNode } from "react";
import type { SheetPart, SheetPort } from "../sheet/types.js";
import { Stub } from "./stub.js";
import { Label, labelWidth, Name, nameWidth, wrap } from "./text.js";
import { type Shape, STUB, type SymbolDefinition, terminalAt } from "./types.js";

/** Half the length of a glyph, leads included. */
export const HALF = 24;
const LETTERS = 20;

export interface TwoPinGlyph {
	readonly title: string;
	/** Drawn around (0, 0), current from above: `first` at (0, -HALF), the other pin at (0, HALF). */
	readonly glyph: (part: SheetPart) => ReactNode;
	/** Role of the pin that is above in the glyph. */
	readonly first: string;
	/** Further text under the label, e.g. a rating. */
	readonly detail?: (part: SheetPart) => string;
}

export function twoPin({ title, glyph, first, detail }: TwoPinGlyph): SymbolDefinition<SheetPart> {
	const linesOf = (part: SheetPart) =>
		[...wrap(part.label || part.kind, LETTERS, 2), detail?.(part) ?? ""].filter(Boolean);
	return {
		title,
		shape: (part) => shapeOf(part, first, linesOf(part)),
		draw: (part, shape) => (
			<TwoPin part={part} shape={shape} first={first} lines={linesOf(part)} glyph={glyph(part)} />
		),
	};
}

const textWidth = (part: SheetPart, lines: readonly string[]) =>
	Math.max(nameWidth(part.id), ...lines.map(labelWidth));

/** The pin above in the glyph, then the other. */
function ordered(part: SheetPart, first: string): [SheetPort, SheetPort] {
	const [a, b] = part.ports as [SheetPort, SheetPort];
	return b.role === first ? [b, a] : [a, b];
}

const CENTRE = STUB + HALF;
const SPAN = 68;

function shapeOf(part: SheetPart, first: string, lines: readonly string[]): Shape {
	const [a, b] = ordered(part, first);
	const text = textWidth(part, lines);
	if (a.side !== b.side) {
		const height = 2 * CENTRE;
		const at = (port: SheetPort) => terminalAt(port, port.side, 24, port.side === "north" ? 0 : height);
		return { width: 48 + text, height, terminals: [at(a), at(b)] };
	}
	const width = Math.max(SPAN + 40, text + 8);
	const height = STUB + 36 + 16 * (lines.length + 1);
	const y = a.side === "north" ? 0 : height;
	const left = width / 2 - SPAN / 2;
	return {
		width,
		height,
		terminals: [terminalAt(a, a.side, left, y), terminalAt(b, b.side, left + SPAN, y)],
	};
}

interface TwoPinProps {
	readonly part: SheetPart;
	readonly shape: Shape;
	readonly first: string;
	readonly lines: readonly string[];
	readonly glyph: ReactNode;
}

function TwoPin({ part, shape, first, lines, glyph }: TwoPinProps) {
	const ports = ordered(part, first);
	const stubs = ports.map((port, k) => {
		const { x, y } = shape.terminals[k]!;
		return <Stub key={port.contact} port={port} side={port.side} x={x} y={y} />;
	});
	if (ports[0].side !== ports[1].side)
		return (
			<>
				{stubs}
				<g transform={`translate(24 ${CENTRE})${ports[0].side === "south" ? " rotate(180)" : ""}`}>{glyph}</g>
				<Caption part={part} lines={lines} x={46} y={CENTRE - 6 * lines.length} anchor="start" />
			</>
		);
	const north = ports[0].side === "north";
	const inner = north ? STUB : shape.height - STUB;
	const axis = north ? inner + 14 : inner - 14;
	const [left, right] = [shape.terminals[0]!.x, shape.terminals[1]!.x];
	const legs = `M${left} ${inner}V${axis}H${left + SPAN / 2 - HALF}M${right} ${inner}V${axis}H${right - SPAN / 2 + HALF}`;
	return (
		<>
			{stubs}
			<path className="draw-line" d={legs} />
			<g transform={`translate(${left + SPAN / 2} ${axis}) rotate(-90)`}>{glyph}</g>
			<Caption part={part} lines={lines} x={shape.width / 2} y={north ? axis + 32 : 12} anchor="middle" />
		</>
	);
}

interface CaptionProps {
	readonly part: { readonly id: string };
	readonly lines: readonly string[];
	readonly x: number;
	readonly y: number;
	readonly anchor: "start" | "middle";
}

export const Caption = ({ part, lines, x, y, anchor }: CaptionProps) => (
	<>
		<Name x={x} y={y} anchor={anchor}>
			{part.id}
		</Name>
		{lines.map((line, k) => (
			<Label key={line} x={x} y={y + 15 * (k + 1)} anchor={anchor}>
				{line}
			</Label>
		))}
	</>
);
