/** One wire: what it carries, how warm it gets, what it loses, the smallest size that does, and its ends as they are made. */
import { SIZE_SOURCES } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import type { Sizes } from "../../engine/protocol.js";
import { Facts } from "../../shared/Facts.js";
import { WireSwatch } from "../../shared/WireSwatch.js";
import { colourNames, endWords, lengthWords } from "../../shared/wire-words.js";
import { amount } from "../../shared/words.js";
import { Discs } from "./Discs.js";
import { Ends } from "./Ends.js";
import { Figures } from "./Figures.js";
import { degrees } from "./rows.js";
import { useWhenWords } from "./use-when-words.js";

export type WireSize = Sizes["wires"][number];

const BECAUSE: Readonly<Record<NonNullable<WireSize["needed"]>["because"], string>> = {
	heat: "what it carries would warm a thinner one too much",
	fuse: "the fuse before it would not save a thinner one",
	handling: "a thinner one does not stand being worked on",
};

export function WireDetail({ size }: { size: WireSize }) {
	const { car, job } = useCar();
	const [query] = useSettings();
	const which = whichOf(query);
	const [drawn, setDrawn] = useState(false);
	const words = useWhenWords(which);
	const wire = car[which].wires.get(size.wire);
	if (!wire) return null;
	const { needed, fuse, limitCelsius } = size;
	const change = new URLSearchParams({ subject: `wires/${size.wire}` });
	return (
		<article className="stack">
			<h2>
				<span className="mono">{size.wire}</span> <WireSwatch colours={wire.colours} />{" "}
				{colourNames(wire.colours)}
			</h2>
			<Facts
				facts={[
					["From", endWords(car[which], wire.from)],
					["To", endWords(car[which], wire.to)],
					["Length", lengthWords(size.metres)],
					["Bundle", size.bundle],
				]}
			/>
			<div className="size-verdict">
				<Discs mm2={size.mm2} needed={needed?.mm2} />
				<p className="notice" data-tone={size.suffices ? undefined : "stop"}>
					<strong>{size.suffices ? "It does." : "It does not do."}</strong> {size.mm2} mm², about {size.awg}{" "}
					AWG.{" "}
					{needed
						? `The smallest that does is ${needed.mm2} mm² or ${needed.awg} AWG: ${BECAUSE[needed.because]}.`
						: "No size on the shelf does."}
				</p>
			</div>
			<Figures
				label="What it carries"
				figures={[
					{
						name: "Lasting current",
						value: amount(size.steady.amps, "A"),
						when: words(size.steady.condition),
						source: SIZE_SOURCES.steady,
					},
					{
						name: "While the starter turns",
						value: amount(size.brief.amps, "A"),
						when: words(size.brief.condition),
						source: SIZE_SOURCES.steady,
					},
					{
						name: "Lamps switched on cold",
						value: amount(size.rush.amps, "A"),
						when: words(size.rush.condition),
						source: SIZE_SOURCES.rush,
					},
					{
						name: "Motors started",
						value: amount(size.start.amps, "A"),
						when: words(size.start.condition),
						source: SIZE_SOURCES.rush,
					},
					{ name: "Lost in it", value: amount(size.volts, "V"), source: SIZE_SOURCES.volts },
					{
						name: `Its conductor, ${size.loaded} loaded in its bundle`,
						value: degrees(size.celsius),
						source: SIZE_SOURCES.celsius,
					},
					{
						name: "What its insulation stands",
						value: degrees(limitCelsius),
						source: SIZE_SOURCES.limitCelsius,
					},
					{
						name: "Fuse before it",
						value: fuse === "" ? undefined : fuse,
						without: "none, or it is on the ground side",
						source: "the network",
					},
				]}
			/>
			<Ends ends={size.ends} />
			<div className="buttons">
				<Button variant="default" aria-pressed={drawn} onClick={() => setDrawn(!drawn)}>
					{drawn ? "Close the drawing" : "Drawing"}
				</Button>
				<Button
					component="a"
					variant="default"
					href={formatRoute({ job: job.id, stage: "what-if", query: change })}
				>
					What if it were another?
				</Button>
			</div>
			{drawn && <Drawing which={which} path={[size.wire]} />}
		</article>
	);
}
