/** A part known by its pins: control units, modules, sensors with electronics. A box with the pins concerned (IEC 60617 functional block). */
import type { SheetPart, SheetPort, Side } from "../sheet/types.js";
import { Stub } from "./stub.js";
import { clip, Label, labelWidth, Name, nameWidth, wrap } from "./text.js";
import { type Shape, STUB, type SymbolDefinition, terminalAt } from "./types.js";

const PIN_LETTERS = 15;
const ROW = 52;
const TITLE = 46;

const pinLines = (port: SheetPort) => wrap(port.label || port.role, PIN_LETTERS, 2);
const kindText = (part: SheetPart) => (part.label === "" ? part.kind : part.label);

const cellWidth = (port: SheetPort) =>
	Math.max(64, nameWidth(port.name) + 20, ...pinLines(port).map((line) => labelWidth(line) + 16));
const rowWidth = (ports: readonly SheetPort[]) => ports.reduce((sum, port) => sum + cellWidth(port), 0);
const on = (part: SheetPart, side: Side) => part.ports.filter((port) => port.side === side);

function shapeOf(part: SheetPart): Shape {
	const [north, south] = [on(part, "north"), on(part, "south")];
	const title = Math.max(nameWidth(part.id), labelWidth(clip(kindText(part), 34))) + 32;
	const width = Math.max(title, rowWidth(north), rowWidth(south));
	const height = 2 * STUB + TITLE + ROW * (Number(north.length > 0) + Number(south.length > 0));
	const row = (ports: readonly SheetPort[], side: Side, y: number) => {
		let x = (width - rowWidth(ports)) / 2;
		return ports.map((port) => {
			const middle = x + cellWidth(port) / 2;
			x += cellWidth(port);
			return terminalAt(port, side, middle, y);
		});
	};
	return { width, height, terminals: [...row(north, "north", 0), ...row(south, "south", height)] };
}

export const unit: SymbolDefinition<SheetPart> = {
	title: "Part with electronics",
	shape: shapeOf,
	draw(part, shape) {
		const ports = new Map(part.ports.map((port) => [port.contact, port]));
		const middle = STUB + (on(part, "north").length > 0 ? ROW : 0) + TITLE / 2;
		return (
			<>
				<rect
					className="draw-body draw-box"
					x={0.5}
					y={STUB}
					width={shape.width - 1}
					height={shape.height - 2 * STUB}
					rx={4}
				/>
				{shape.terminals.map(({ id, side, x, y }) => {
					const port = ports.get(id)!;
					const lines = pinLines(port);
					const top = side === "north" ? STUB + 17 : shape.height - STUB - 7 - 15 * lines.length;
					return (
						<g key={id}>
							<Stub port={port} side={side} x={x} y={y} text="" />
							<Name x={x} y={top} anchor="middle">
								{port.name}
							</Name>
							{lines.map((line, k) => (
								<Label key={line} x={x} y={top + 15 * (k + 1)} anchor="middle">
									{line}
								</Label>
							))}
						</g>
					);
				})}
				<text className="draw-title" x={shape.width / 2} y={middle - 1} textAnchor="middle">
					{part.id}
				</text>
				<Label x={shape.width / 2} y={middle + 15} anchor="middle">
					{clip(kindText(part), 34)}
				</Label>
			</>
		);
	},
};
