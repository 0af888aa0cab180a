/** A wire in its own colours: base colour, stripes of the others, an outline that tells it from the ground. */
import { memo } from "react";
import { rounded } from "../layout/rounded.js";
import type { PlacedWire } from "../layout/types.js";
import { strokesOf } from "./wire-colours.js";

interface WireLineProps {
	readonly placed: PlacedWire;
	readonly selected: boolean;
}

export const WireLine = memo(function WireLine({ placed, selected }: WireLineProps) {
	const { wire, points, text, textAt } = placed;
	const path = rounded(points, 7);
	const heavy = wire.mm2 >= 6 ? 2 : 0;
	const state = selected ? "selected" : wire.onPath ? "path" : "around";
	return (
		<g className="draw-wire" data-wire={wire.id} data-state={state}>
			<path className="draw-wire-halo" d={path} />
			<path className="draw-wire-edge" d={path} strokeWidth={6.5 + heavy} />
			{strokesOf(wire.colours).map(({ hex, dash, shift }) => (
				<path
					key={hex + shift}
					d={path}
					fill="none"
					stroke={hex}
					strokeWidth={4.5 + heavy}
					strokeDasharray={dash}
					strokeDashoffset={shift}
				/>
			))}
			{textAt && (
				<text className="draw-wire-text" x={textAt.x + 2} y={textAt.y + 11}>
					{text}
				</text>
			)}
		</g>
	);
});
