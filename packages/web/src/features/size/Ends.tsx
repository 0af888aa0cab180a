/** How the ends of a wire are made: terminal, strip length, the pull the crimp must stand, the seal. */
import { SIZE_SOURCES } from "@loomwright/engine";
import { Figures } from "./Figures.js";
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
					{
						name: "Strip",
						value: stripMm && `${stripMm.value} mm`,
						without: "not listed for this size",
						source: stripMm?.source ?? "",
					},
					{
						name: "The crimp must stand a pull of",
						value: pullNewtons && `${pullNewtons.value} N`,
						without: "not listed for this size",
						source: pullNewtons?.source ?? "",
					},
					{
						name: "The same by American gauges",
						value: pullNewtonsAwg && `${pullNewtonsAwg.value} N`,
						without: "not listed for this size",
						source: pullNewtonsAwg?.source ?? "",
					},
					{
						name: "Seal for an outside diameter of",
						value: sealMm && `${sealMm.value} mm`,
						without: "no seal",
						source: sealMm?.source ?? "",
					},
				]}
			/>
		</section>
	));
}
