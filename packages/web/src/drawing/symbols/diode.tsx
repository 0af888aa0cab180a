/** Diode and light-emitting diode: IEC 60617 05-03-01 and 05-03-02; current flows in the triangle's direction. */
import { HALF, twoPin } from "./two-pin.js";

const DIODE = (
	<>
		<path className="draw-line" d={`M0 ${-HALF}V${HALF}M-10 9H10`} />
		<path className="draw-body" d="M-10 -9H10L0 9Z" />
	</>
);

export const diode = twoPin({ title: "Diode", first: "a", glyph: () => DIODE });

export const led = twoPin({
	title: "Light-emitting diode",
	first: "a",
	glyph: () => (
		<>
			{DIODE}
			<path className="draw-line draw-thin" d="M13 -4l8 -6m-5 0h5v5M13 5l8 -6m-5 0h5v5" />
		</>
	),
});
