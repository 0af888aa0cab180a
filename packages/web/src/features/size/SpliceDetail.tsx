/** One splice: how it is made and what it must stand. */
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import type { Sizes } from "../../engine/protocol.js";
import { Facts } from "../../shared/Facts.js";
import { Figures, listed } from "./Figures.js";

export function SpliceDetail({ size }: { size: Sizes["splices"][number] }) {
	const { car } = useCar();
	const [query] = useSettings();
	const which = whichOf(query);
	const joint = car[which].joints.get(size.splice);
	const { barrelMm2, sleeveMm, stripMm, pullNewtons } = size;
	return (
		<article className="stack">
			<h2>
				<span className="mono">{size.splice}</span> {joint?.label}
			</h2>
			<Facts
				facts={[
					["Kind", size.kind],
					["Wires", size.wires.join(", ")],
					["Place", joint?.place ?? ""],
					["Zone", size.wet ? "wet: sealed" : "dry"],
				]}
			/>
			<Figures
				label="How it is made"
				figures={[
					listed(`Barrel that holds ${size.mm2} mm²`, barrelMm2, "mm²", "none on the shelf"),
					listed("Strip", stripMm, "mm"),
					listed("Sleeve with sealing glue, 3 to 1, as supplied", sleeveMm, "mm", "none spans it"),
					listed("Its thinnest wire must stand a pull of", pullNewtons, "N"),
				]}
			/>
			<Drawing which={which} path={[size.splice]} />
		</article>
	);
}
