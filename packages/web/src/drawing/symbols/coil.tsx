/** Winding: IEC 60617 04-03-01. Also of injectors, valves and two-wire speed and knock sensors. */
import { HALF, twoPin } from "./two-pin.js";

export const coil = twoPin({
	title: "Winding",
	first: "a",
	glyph: () => (
		<path
			className="draw-line"
			d={`M0 ${-HALF}V-20a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10V${HALF}`}
		/>
	),
});
