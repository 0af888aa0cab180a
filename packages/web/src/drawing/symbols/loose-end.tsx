/** A wire's end that is nowhere: bare, or isolated and tied back. */
import type { SheetLooseEnd } from "../sheet/types.js";
import { Label, labelWidth } from "./text.js";
import type { SymbolDefinition } from "./types.js";

const words = ({ insulated }: SheetLooseEnd) => (insulated ? "isolated and stowed" : "bare end");

export const looseEnd: SymbolDefinition<SheetLooseEnd> = {
	title: "Loose end",
	shape: (end) => ({
		width: 28 + labelWidth(words(end)),
		height: 24,
		terminals: [
			{ id: "north", side: "north", x: 12, y: 0 },
			{ id: "south", side: "south", x: 12, y: 24 },
		],
	}),
	draw: (end) => (
		<>
			{end.insulated ? (
				<rect className="draw-body" x={5} y={4} width={14} height={16} rx={7} />
			) : (
				<path className="draw-line draw-danger" d="M12 0V8M5 8H19M5 8l3 10M12 8v12M19 8l-3 10" />
			)}
			<Label x={26} y={17}>
				{words(end)}
			</Label>
		</>
	),
};
