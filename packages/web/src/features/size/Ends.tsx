/** How the ends of a wire are made: terminal, strip length, the pull the crimp must stand, the seal. */
import { SIZE_SOURCES } from "@loomwright/engine";
import { Figures, listed } from "./Figures.js";
import type { WireSize } from "./WireDetail.js";

export function Ends({ ends }: { ends: WireSize["ends"] }) {
	return ends.map(({ at, terminal, stripMm, pullNewtons, pullNewtonsAwg, sealMm }) => (
		<section key={at} className="panel stack">
			<h3>
				End at <span className="mono">{at}</span>
			</h3>
			<Figures
				label={`The end at ${at}`}
				figures={[
					{ name: "Terminal", value: terminal, source: SIZE_SOURCES.terminal },
					listed("Strip", stripMm, "mm"),
					listed("The crimp must stand a pull of", pullNewtons, "N"),
					listed("The same by American gauges", pullNewtonsAwg, "N"),
					listed("Seal for an outside diameter of", sealMm, "mm", "no seal"),
				]}
			/>
		</section>
	));
}
