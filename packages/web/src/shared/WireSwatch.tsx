/** A short piece of wire in its colours. Beside text that names them. */
import { strokesOf } from "../drawing/view/wire-colours.js";

export const WireSwatch = ({ colours }: { colours: readonly string[] }) => (
	<svg className="swatch" width="46" height="12" viewBox="0 0 46 12" aria-hidden="true">
		<path d="M2 6H44" className="draw-wire-edge" strokeWidth={9} strokeLinecap="round" />
		{strokesOf(colours).map(({ hex, dash, shift }, k) => (
			<path
				key={hex}
				d="M2 6H44"
				stroke={hex}
				strokeWidth={7}
				strokeDasharray={dash}
				strokeDashoffset={shift - 3}
				strokeLinecap={k === 0 ? "round" : "butt"}
			/>
		))}
	</svg>
);
