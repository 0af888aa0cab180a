/** What is known of one wire, and how it stands in the condition drawn. */
import type { Which } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { useWireState } from "../../engine/hooks.js";
import { Facts } from "../../shared/Facts.js";
import { readingWords } from "../../shared/reading-words.js";
import { WireSwatch } from "../../shared/WireSwatch.js";
import { colourNames, endWords, lengthWords } from "../../shared/wire-words.js";

interface WirePanelProps {
	readonly which: Which;
	readonly wire: string;
	/** Condition; empty: at rest, where nothing flows. */
	readonly when: string;
	readonly close: () => void;
}

export function WirePanel({ which, wire: id, when, close }: WirePanelProps) {
	const loom = useCar().car[which];
	const state = useWireState(which, id, when);
	const wire = loom.wires.get(id);
	if (!wire) return null;
	const condition = loom.conditions.get(when)?.title || when;
	const { from, to, amps, refused } = state.data ?? {};
	return (
		<section className="panel stack" aria-label={`Wire ${id}`} aria-live="polite">
			<header className="panel-head">
				<WireSwatch colours={wire.colours} />
				<h3>
					Wire <span className="mono">{id}</span>
				</h3>
				<Button variant="default" onClick={close}>
					Close
				</Button>
			</header>
			<Facts
				facts={[
					[
						"Colour",
						`${colourNames(wire.colours)} ${wire.colours.length > 0 ? `(${wire.colours.join("")})` : ""}`,
					],
					["Size", `${wire.mm2} mm²`],
					["Length", lengthWords(wire.metres)],
					["Circuit", wire.circuit],
					["Twisted pair", wire.pair],
					["Bundle", wire.bundle],
					["From", endWords(loom, wire.from)],
					["To", endWords(loom, wire.to)],
					["Marks", wire.marks.join(", ")],
					["Note", wire.note],
				]}
			/>
			{when === "" ? (
				<p className="soft">Choose how the car stands above the drawing to see its current and volts.</p>
			) : refused ? (
				<p>{refused}</p>
			) : state.error ? (
				<p>{state.error.message}</p>
			) : (
				<Facts
					facts={[
						["Standing", condition],
						["Volts at from", from ? readingWords(from) : state.data ? "loose end" : "…"],
						["Volts at to", to ? readingWords(to) : state.data ? "loose end" : "…"],
						["Current", amps ? readingWords(amps) : state.data ? "none, an end is loose" : "…"],
					]}
				/>
			)}
		</section>
	);
}
