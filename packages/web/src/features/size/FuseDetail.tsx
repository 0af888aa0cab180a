/** One fuse: what it carries, what it holds, and whether it opens before its thinnest wire is too hot. */
import { SIZE_SOURCES } from "@loomwright/engine";
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import type { Sizes } from "../../engine/protocol.js";
import { Facts } from "../../shared/Facts.js";
import { amount, percent } from "../../shared/words.js";
import { Figures } from "./Figures.js";
import { degrees } from "./rows.js";
import { useWhenWords } from "./use-when-words.js";

const holds = (seconds: number | undefined): string =>
	seconds === undefined
		? "for ever"
		: seconds < 1
			? `${Math.round(seconds * 1000)} ms`
			: `${Math.round(seconds)} s`;

export function FuseDetail({ size }: { size: Sizes["fuses"][number] }) {
	const { car } = useCar();
	const [query] = useSettings();
	const which = whichOf(query);
	const words = useWhenWords(which);
	const part = car[which].parts.get(size.fuse);
	const { worst, faults } = size;
	return (
		<article className="stack">
			<h2>
				<span className="mono">{size.fuse}</span> {part?.label}, {size.amps} A
			</h2>
			<p className="notice" data-tone={faults.length > 0 ? "stop" : undefined}>
				<strong>{faults.length === 0 ? "It does." : "It does not do:"}</strong>{" "}
				{faults.length === 0
					? "It holds what it must hold and opens before its thinnest wire is too hot."
					: `it ${faults.join("; it ")}.`}
			</p>
			<Facts
				facts={[
					["Place", part?.place ?? ""],
					["Behind it", size.wires.join(", ")],
				]}
			/>
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
						name: "Of its rating",
						value: percent(size.share),
						source: SIZE_SOURCES.fuseShare,
					},
					{
						name: `Holds its lamps' first rush, ${amount(size.rush.amps, "A")}`,
						value: holds(size.holdsRush),
						when: words(size.rush.condition),
						source: SIZE_SOURCES.gates,
					},
					{
						name: `Holds its motors' start, ${amount(size.start.amps, "A")}`,
						value: holds(size.holdsStart),
						when: words(size.start.condition),
						source: SIZE_SOURCES.gates,
					},
					{
						name: `Largest fuse for its thinnest wire, ${size.thinnest}`,
						value: size.largestAmps === undefined ? undefined : `${size.largestAmps} A`,
						without: "not listed for this size",
						source: "reference/electrical/fuse-for-wire.csv",
					},
					{
						name: worst
							? `At ${amount(worst.amps, "A")} it may take ${holds(worst.seconds)}; the thinnest wire gets to`
							: "The thinnest wire while it opens",
						value: worst && `${degrees(worst.celsius)} of ${degrees(worst.limitCelsius)}`,
						without: "no wire behind it",
						source: worst?.sources.join(", ") ?? "",
					},
				]}
			/>
		</article>
	);
}
