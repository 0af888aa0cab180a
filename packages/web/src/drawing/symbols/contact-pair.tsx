/** One cavity of a connector between two looms: socket and pin, IEC 60617 03-03-05. */
import type { SheetContactPair, Side } from "../sheet/types.js";
import { Label, labelWidth, Name, nameWidth } from "./text.js";
import { type SymbolDefinition, terminalAt } from "./types.js";

const HEIGHT = 56;
const X = 16;

function sidesOf(pair: SheetContactPair): Side[] {
	const [a, b] = pair.ports;
	if (!b) return [a?.side ?? "north"];
	return a!.side === "south" && b.side === "north" ? ["south", "north"] : ["north", "south"];
}

export const contactPair: SymbolDefinition<SheetContactPair> = {
	title: "Connector contact",
	shape: (pair) => ({
		width:
			40 +
			Math.max(
				nameWidth(pair.connector),
				labelWidth(`cavity ${pair.cavity}`),
				pair.mated ? 0 : labelWidth("unmated"),
			),
		height: HEIGHT,
		terminals: pair.ports.map((port, k) => {
			const side = sidesOf(pair)[k]!;
			return terminalAt(port, side, X, side === "north" ? 0 : HEIGHT);
		}),
	}),
	draw(pair, shape) {
		const apart = pair.mated ? 0 : 6;
		return (
			<>
				{shape.terminals.map(({ id, x, y }) => (
					<g key={id} data-contact={id}>
						<circle className="draw-hit" cx={x} cy={y} r={18} />
					</g>
				))}
				<path
					className="draw-line"
					d={`M${X} 0V${20 - apart}M${X - 8} ${28 - apart}a8 8 0 0 1 16 0M${X} ${HEIGHT}V38`}
				/>
				<rect className="draw-solid" x={X - 2.5} y={24 + apart} width={5} height={15} rx={1} />
				<Name x={34} y={24}>
					{pair.connector}
				</Name>
				<Label x={34} y={39}>
					cavity {pair.cavity}
				</Label>
				{!pair.mated && (
					<Label x={34} y={53}>
						unmated
					</Label>
				)}
			</>
		);
	},
};
