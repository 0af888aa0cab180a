/** Generator: IEC 60617 06-04-01, a circle with its letter. */
import { Machine } from "./motor.js";
import { HALF, twoPin } from "./two-pin.js";

export const generator = twoPin({
	title: "Generator",
	first: "B+",
	glyph: () => (
		<>
			<path className="draw-line" d={`M0 ${-HALF}V-15M0 15V${HALF}`} />
			<g transform="rotate(90)">
				<Machine letter="G" />
			</g>
		</>
	),
});
