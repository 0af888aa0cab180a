/** Fuse: IEC 60617 07-21-01, a rectangle with the conductor through it. Pulled: the conductor is missing. */
import { HALF, twoPin } from "./two-pin.js";

export const fuse = twoPin({
	title: "Fuse",
	first: "in",
	glyph: ({ state }) => (
		<>
			<rect className="draw-body" x={-7} y={-16} width={14} height={32} />
			<path
				className="draw-line"
				d={state === "pulled" ? `M0 ${-HALF}V-16M0 16V${HALF}` : `M0 ${-HALF}V${HALF}`}
			/>
		</>
	),
	detail: ({ state }) => (state === "pulled" ? "pulled" : ""),
});
