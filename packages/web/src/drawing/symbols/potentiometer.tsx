/** Potentiometer: IEC 60617 04-01-07, a resistor with a sliding contact. */
import type { SheetPart, SheetPort } from "../sheet/types.js";
import { Stub } from "./stub.js";
import { labelWidth, nameWidth, wrap } from "./text.js";
import { Caption } from "./two-pin.js";
import { STUB, type SymbolDefinition, terminalAt } from "./types.js";

const linesOf = (part: SheetPart) => wrap(part.label || part.kind, 22, 2);
const order = ["supply", "signal", "return"];
const byRole = (part: SheetPart): SheetPort[] =>
	[...part.ports].sort((a, b) => order.indexOf(a.role) - order.indexOf(b.role));

/** Hangs from its three wires: supply, signal and return side by side. */
export const potentiometer: SymbolDefinition<SheetPart> = {
	title: "Potentiometer",
	shape(part) {
		const lines = linesOf(part);
		const width = Math.max(150, nameWidth(part.id), ...lines.map(labelWidth));
		const terminals = byRole(part).map((port, k) => terminalAt(port, "north", width / 2 + 52 * (k - 1), 0));
		return { width, height: STUB + 54 + 16 * lines.length, terminals };
	},
	draw(part, shape) {
		const [a, b, c] = shape.terminals.map(({ x }) => x) as [number, number, number];
		const axis = STUB + 24;
		return (
			<>
				{byRole(part).map((port, k) => (
					<Stub key={port.contact} port={port} side="north" x={shape.terminals[k]!.x} y={0} />
				))}
				<path
					className="draw-line"
					d={`M${a} ${STUB}V${axis}H${b - 20}M${c} ${STUB}V${axis}H${b + 20}M${b} ${STUB}V${axis - 8}`}
				/>
				<path className="draw-solid" d={`M${b} ${axis - 7}l-4 -8h8z`} />
				<rect className="draw-body" x={b - 20} y={axis - 7} width={40} height={14} />
				<Caption part={part} lines={linesOf(part)} x={shape.width / 2} y={axis + 26} anchor="middle" />
			</>
		);
	},
};
