/** Starter: solenoid coil on 50 that closes 30 onto the motor; terminals after DIN 72552. */
import type { SheetPart, SheetPort, Side } from "../sheet/types.js";
import { Machine } from "./motor.js";
import { Stub } from "./stub.js";
import { labelWidth, nameWidth, wrap } from "./text.js";
import { Caption } from "./two-pin.js";
import { STUB, type SymbolDefinition, terminalAt } from "./types.js";

const HEIGHT = 128;
const PLACES: Readonly<Record<string, readonly [Side, number]>> = {
	"50": ["north", 30],
	"30": ["north", 96],
	"31": ["south", 96],
};
const linesOf = (part: SheetPart) => wrap(part.label || "starter", 18, 2);
const place = (port: SheetPort) => PLACES[port.role] ?? (["north", 30] as const);

export const starter: SymbolDefinition<SheetPart> = {
	title: "Starter",
	shape: (part) => ({
		width: 124 + Math.max(nameWidth(part.id), ...linesOf(part).map(labelWidth)),
		height: HEIGHT,
		terminals: part.ports.map((port) => {
			const [side, x] = place(port);
			return terminalAt(port, side, x, side === "north" ? 0 : HEIGHT);
		}),
	}),
	draw: (part) => (
		<>
			{part.ports.map((port) => {
				const [side, x] = place(port);
				return (
					<Stub
						key={port.contact}
						port={port}
						side={side}
						x={x}
						y={side === "north" ? 0 : HEIGHT}
						text={port.role}
					/>
				);
			})}
			<rect className="draw-body" x={13} y={32} width={34} height={22} />
			<path
				className="draw-line"
				d={`M30 ${STUB}V32M30 54V106H96M96 ${STUB}V26M96 26L84 48M96 52V62M96 92V${HEIGHT - STUB}`}
			/>
			<path className="draw-line draw-link" d="M47 42H88" />
			<g transform="translate(96 77)">
				<Machine letter="M" />
			</g>
			<Caption part={part} lines={linesOf(part)} x={120} y={66} anchor="start" />
		</>
	),
};
