/** A drawing in its place: wires below, symbols above. Knows nothing of touch or of the engine. */
import { memo } from "react";
import type { PlacedSheet } from "../layout/types.js";
import { type Shape, symbolOf } from "../symbols/index.js";
import { WireHalo, WireLine } from "./WireLine.js";

interface SheetPictureProps {
	readonly placed: PlacedSheet;
	/** Id of the wire tapped; empty for none. */
	readonly selected: string;
	/** Contacts and joints marked, with the mark's letter, e.g. the two leads of a meter. */
	readonly leads: ReadonlyMap<string, string>;
}

export const SheetPicture = memo(function SheetPicture({ placed, selected, leads }: SheetPictureProps) {
	return (
		<>
			<g className="draw-path">
				{placed.wires.map((wire) => wire.wire.onPath && <WireHalo key={wire.wire.id} placed={wire} />)}
			</g>
			<g className="draw-selected">
				{placed.wires.map((wire) => wire.wire.id === selected && <WireHalo key={selected} placed={wire} />)}
			</g>
			{placed.wires.map((wire) => (
				<WireLine key={wire.wire.id} placed={wire} />
			))}
			{placed.nodes.map(({ node, shape, x, y }) => (
				<g key={node.id} className="draw-node" data-node={node.id} transform={`translate(${x} ${y})`}>
					{node.what === "part" && <LeaveAlone marks={node.marks} shape={shape} />}
					{symbolOf(node).draw(node, shape)}
					{shape.terminals.map((terminal) => {
						const id = node.what === "joint" ? node.id : terminal.id;
						const lead = leads.get(id);
						if (lead === undefined || (node.what === "joint" && terminal !== shape.terminals[0])) return null;
						return <LeadMark key={id} letter={lead} x={terminal.x} y={terminal.y} />;
					})}
				</g>
			))}
		</>
	);
});

const NEVER_TOUCHED = ["pyrotechnic", "high voltage"];

/** Parts that are shown so that they are left alone. */
function LeaveAlone({ marks, shape: { width, height } }: { marks: readonly string[]; shape: Shape }) {
	if (!NEVER_TOUCHED.some((word) => marks.includes(word))) return null;
	return (
		<>
			<rect className="draw-leave" x={-8} y={8} width={width + 16} height={height - 16} rx={6} />
			<text className="draw-leave-text" x={width + 6} y={3} textAnchor="end">
				leave alone
			</text>
		</>
	);
}

const LeadMark = ({ letter, x, y }: { letter: string; x: number; y: number }) => (
	<g className="draw-lead" data-lead={letter}>
		<circle cx={x} cy={y} r={11} />
		<text x={x} y={y + 4.5} textAnchor="middle">
			{letter}
		</text>
	</g>
);
