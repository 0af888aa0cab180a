/** Lamp: IEC 60617 08-10-01. */
import { HALF, twoPin } from "./two-pin.js";

export const lamp = twoPin({
	title: "Lamp",
	first: "a",
	glyph: () => (
		<>
			<path className="draw-line" d={`M0 ${-HALF}V-13M0 13V${HALF}`} />
			<circle className="draw-body" r={13} />
			<path className="draw-line" d="M-9.2 -9.2L9.2 9.2M-9.2 9.2L9.2 -9.2" />
		</>
	),
});
