/** Igniter of a restraint: a heating wire in a box of its own, always with its warning. Not in IEC 60617; a sign of this project. */
import { HALF, twoPin } from "./two-pin.js";

export const igniter = twoPin({
	title: "Igniter (pyrotechnic)",
	first: "a",
	glyph: () => (
		<>
			<path className="draw-line draw-danger" d={`M0 ${-HALF}V-8l-5 4l10 4l-10 4l5 4V${HALF}`} />
			<rect className="draw-line draw-danger" x={-13} y={-17} width={26} height={34} rx={3} />
		</>
	),
	detail: () => "never measure",
});
