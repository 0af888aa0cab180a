/** Switch: one blade per pole (IEC 60617 07-02-01, 07-02-04), drawn in the position it stands in. */
import type { SheetPart, SheetPort, Side } from "../sheet/types.js";
import { type Pole, polesOf } from "./poles.js";
import { Stub } from "./stub.js";
import { Label, labelWidth, Name, nameWidth, wrap } from "./text.js";
import { STUB, type SymbolDefinition, terminalAt } from "./types.js";

const HEIGHT = 2 * STUB + 48;
const PITCH = 44;
const linesOf = (part: SheetPart) => wrap(part.label || "switch", 18, 2);

interface PlacedPole extends Pole {
	readonly left: number;
	readonly width: number;
	readonly side: Side;
}

function place(part: SheetPart): PlacedPole[] {
	let left = 8;
	return polesOf(part).map((pole) => {
		const width = PITCH * Math.max(1, pole.throws.length);
		const placed = { ...pole, left, width, side: pole.common.side };
		left += width + 8;
		return placed;
	});
}

const commonX = (pole: PlacedPole) => pole.left + pole.width / 2;
const throwX = (pole: PlacedPole, k: number) => pole.left + PITCH * (k + 0.5);
const other = (side: Side): Side => (side === "north" ? "south" : "north");
const yOf = (side: Side) => (side === "north" ? 0 : HEIGHT);

function pins(pole: PlacedPole): { port: SheetPort; side: Side; x: number }[] {
	const away = other(pole.side);
	const throws = pole.throws.map((port, k) => ({ port, side: away, x: throwX(pole, k) }));
	return [{ port: pole.common, side: pole.side, x: commonX(pole) }, ...throws];
}

export const switchSymbol: SymbolDefinition<SheetPart> = {
	title: "Switch",
	shape(part) {
		const poles = place(part);
		const last = poles.at(-1);
		const end = last ? last.left + last.width : 8;
		const lines = [...linesOf(part), part.state];
		return {
			width: end + 10 + Math.max(nameWidth(part.id), ...lines.map(labelWidth)),
			height: HEIGHT,
			terminals: poles.flatMap(pins).map(({ port, side, x }) => terminalAt(port, side, x, yOf(side))),
		};
	},
	draw(part) {
		const poles = place(part);
		const last = poles.at(-1)!;
		const text = last.left + last.width + 6;
		const lines = [...linesOf(part), part.state].filter(Boolean);
		return (
			<>
				{poles.map((pole) => (
					<PoleDrawing key={pole.common.contact} pole={pole} state={part.state} />
				))}
				{poles.length > 1 && (
					<path className="draw-line draw-link" d={`M${commonX(poles[0]!)} ${HEIGHT / 2}H${commonX(last)}`} />
				)}
				<Name x={text} y={HEIGHT / 2 - 7 * lines.length + 6}>
					{part.id}
				</Name>
				{lines.map((line, k) => (
					<Label key={line} x={text} y={HEIGHT / 2 - 7 * lines.length + 6 + 15 * (k + 1)}>
						{line}
					</Label>
				))}
			</>
		);
	},
};

function PoleDrawing({ pole, state }: { pole: PlacedPole; state: string }) {
	const closed = pole.throws.flatMap((port, k) => (pole.closedIn(state, port) ? [throwX(pole, k)] : []));
	const tips = closed.length > 0 ? closed : [pole.throws.length === 1 ? commonX(pole) - 15 : commonX(pole)];
	const [head, foot] = pole.side === "north" ? [24, HEIGHT - 24] : [HEIGHT - 24, 24];
	const reach = closed.length === 0 && pole.throws.length > 1 ? (head + foot) / 2 : foot;
	return (
		<>
			{pins(pole).map(({ port, side, x }) => (
				<Stub key={port.contact} port={port} side={side} x={x} y={yOf(side)} into={24} />
			))}
			{tips.map((x) => (
				<path key={x} className="draw-line" d={`M${commonX(pole)} ${head}L${x} ${reach}`} />
			))}
			<circle className="draw-solid" cx={commonX(pole)} cy={head} r={2.5} />
		</>
	);
}
