/** Places where wires meet: splice (IEC 60617 03-02-01, a dot), ground (02-15-04, frame), bar. */
import type { SheetJoint, Side } from "../sheet/types.js";
import { clip, Label, labelWidth, Name, nameWidth } from "./text.js";
import { BAR_PITCH, type Shape, type SymbolDefinition, type Terminal } from "./types.js";

const undrawnText = ({ undrawn }: SheetJoint) =>
	undrawn === 0 ? "" : `+ ${undrawn} ${undrawn === 1 ? "wire" : "wires"} not drawn`;

/** All wires of a joint meet in two points: those from above and those from below. */
const terminals = (x: number, top: number, bottom: number): Shape["terminals"] => [
	{ id: "north", side: "north", x, y: top },
	{ id: "south", side: "south", x, y: bottom },
];

export const splice: SymbolDefinition<SheetJoint> = {
	title: "Splice",
	shape: (joint) => ({
		width: 24 + Math.max(nameWidth(joint.id), labelWidth(undrawnText(joint))),
		height: 12,
		terminals: terminals(6, 0, 12),
	}),
	draw: (joint) => (
		<g data-joint={joint.id}>
			<circle className="draw-hit" cx={6} cy={6} r={18} />
			<path className="draw-line" d="M6 0V12" />
			<circle className="draw-solid" cx={6} cy={6} r={6} />
			<Name x={18} y={undrawnText(joint) === "" ? 10 : 4}>
				{joint.id}
			</Name>
			<Label x={18} y={18}>
				{undrawnText(joint)}
			</Label>
		</g>
	),
};

const groundWords = (joint: SheetJoint) =>
	[clip(joint.label || joint.place, 24), undrawnText(joint)].filter(Boolean);

export const ground: SymbolDefinition<SheetJoint> = {
	title: "Ground point",
	shape(joint) {
		const words = groundWords(joint);
		const width = Math.max(48, nameWidth(joint.id), ...words.map(labelWidth));
		return {
			width,
			height: 48 + 15 * words.length,
			terminals: terminals(width / 2, 0, 48 + 15 * words.length),
		};
	},
	draw(joint, { width }) {
		const x = width / 2;
		return (
			<g data-joint={joint.id}>
				<circle className="draw-hit" cx={x} cy={10} r={20} />
				<path
					className="draw-line draw-thick"
					d={`M${x} 0V14M${x - 16} 14H${x + 16}M${x - 10} 20H${x + 10}M${x - 4} 26H${x + 4}`}
				/>
				<Name x={x} y={42} anchor="middle">
					{joint.id}
				</Name>
				{groundWords(joint).map((line, k) => (
					<Label key={line} x={x} y={57 + 15 * k} anchor="middle">
						{line}
					</Label>
				))}
			</g>
		);
	},
};

/** Every wire has a place of its own on a bar, from the left; text stands beside it. */
const BAR_HEIGHT = 10;
const barWords = (joint: SheetJoint) => [clip(joint.label, 26), undrawnText(joint)].filter(Boolean);
const barLength = ({ above, below }: SheetJoint) => BAR_PITCH * Math.max(2, above.length, below.length);

export const bar: SymbolDefinition<SheetJoint> = {
	title: "Bar",
	shape(joint) {
		const row = (wires: readonly string[], side: Side): Terminal[] =>
			wires.map((id, k) => ({ id, side, x: BAR_PITCH * (k + 0.5), y: side === "north" ? 0 : BAR_HEIGHT }));
		return {
			width: barLength(joint) + 10 + Math.max(nameWidth(joint.id), ...barWords(joint).map(labelWidth)),
			height: BAR_HEIGHT,
			terminals: [...row(joint.above, "north"), ...row(joint.below, "south")],
			sliding: true,
		};
	},
	draw(joint) {
		const length = barLength(joint);
		return (
			<g data-joint={joint.id}>
				<rect className="draw-hit" width={length} y={-14} height={38} />
				<rect className="draw-solid" width={length} height={BAR_HEIGHT} rx={3} />
				<Name x={length + 10} y={2}>
					{joint.id}
				</Name>
				{barWords(joint).map((line, k) => (
					<Label key={line} x={length + 10} y={18 + 16 * k}>
						{line}
					</Label>
				))}
			</g>
		);
	},
};
