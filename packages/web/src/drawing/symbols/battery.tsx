/** Battery: IEC 60617 06-15-01, the long line is plus. */
import { HALF, twoPin } from "./two-pin.js";

export const battery = twoPin({
	title: "Battery",
	first: "+",
	glyph: () => (
		<>
			<path className="draw-line" d={`M0 ${-HALF}V-9M-14 -9H14M-14 3H14M0 9V${HALF}`} />
			<path className="draw-line draw-thick" d="M-7 -3H7M-7 9H7" />
			<path className="draw-line draw-thin" d="M9 -18h8M13 -22v8" />
		</>
	),
	detail: ({ state }) => (state === "off" ? "taken off" : ""),
});
