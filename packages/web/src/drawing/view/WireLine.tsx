/** A wire in its own colours: base colour, stripes of the others, an outline that tells it from the ground. */
import { memo } from "react";
import { rounded } from "../layout/rounded.js";
import type { PlacedWire } from "../layout/types.js";
import { strokesOf } from "./wire-colours.js";

const RADIUS = 7;

export const WireLine = memo(function WireLine({ placed }: { readonly placed: PlacedWire }) {
	const { wire, points, text, textAt } = placed;
	const path = rounded(points, RADIUS);
	const heavy = wire.mm2 >= 6 ? 2 : 0;
	return (
		<g className="draw-wire" data-wire={wire.id}>
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

/** A broad line under a wire that is meant. */
export const WireHalo = ({ placed }: { readonly placed: PlacedWire }) => (
	<path className="draw-wire-halo" d={rounded(placed.points, RADIUS)} />
);
