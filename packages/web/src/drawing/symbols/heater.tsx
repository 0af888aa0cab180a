/** Heating element: IEC 60617 04-01-12, a resistor with cross lines. */
import { RESISTOR_BODY } from "./resistor.js";
import { twoPin } from "./two-pin.js";

export const heater = twoPin({
	title: "Heating element",
	first: "a",
	glyph: () => (
		<>
			{RESISTOR_BODY}
			<path className="draw-line" d="M-7 -8H7M-7 0H7M-7 8H7" />
		</>
	),
});
