/** Motor: IEC 60617 06-04-01, a circle with its letter. */
import { HALF, twoPin } from "./two-pin.js";

export const Machine = ({ letter }: { letter: string }) => (
	<>
		<circle className="draw-body" r={15} />
		<text className="draw-letter" textAnchor="middle" dominantBaseline="central" transform="rotate(0)">
			{letter}
		</text>
	</>
);

export const motor = twoPin({
	title: "Motor",
	first: "a",
	glyph: () => (
		<>
			<path className="draw-line" d={`M0 ${-HALF}V-15M0 15V${HALF}`} />
			<Machine letter="M" />
		</>
	),
});
