/** Resistor: IEC 60617 04-01-01. */
import { HALF, twoPin } from "./two-pin.js";

export const RESISTOR_BODY = (
	<>
		<path className="draw-line" d={`M0 ${-HALF}V-16M0 16V${HALF}`} />
		<rect className="draw-body" x={-7} y={-16} width={14} height={32} />
	</>
);

export const resistor = twoPin({ title: "Resistor", first: "a", glyph: () => RESISTOR_BODY });

export const busEnd = twoPin({ title: "End resistor of a bus", first: "high", glyph: () => RESISTOR_BODY });
