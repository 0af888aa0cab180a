/** Resistor that follows temperature: IEC 60617 04-01-03 with the sign of the quantity. */
import { RESISTOR_BODY } from "./resistor.js";
import { twoPin } from "./two-pin.js";

export const thermistor = twoPin({
	title: "Temperature sensor",
	first: "a",
	glyph: () => (
		<>
			{RESISTOR_BODY}
			<path className="draw-line" d="M-14 18H-9L12 -18" />
		</>
	),
});
