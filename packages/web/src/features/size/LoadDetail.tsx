/** One load: the volts it gets, and what is lost on the way to it and back. */
import { SIZE_SOURCES } from "@loomwright/engine";
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import type { Sizes } from "../../engine/protocol.js";
import { amount } from "../../shared/words.js";
import { Figures } from "./Figures.js";
import { loadId } from "./rows.js";
import { useWhenWords } from "./use-when-words.js";

export function LoadDetail({ size }: { size: Sizes["loads"][number] }) {
	const { car } = useCar();
	const [query] = useSettings();
	const which = whichOf(query);
	const words = useWhenWords(which);
	const source = SIZE_SOURCES.steady;
	return (
		<article className="stack">
			<h2>
				<span className="mono">{loadId(size)}</span> {car[which].parts.get(size.part)?.label}
			</h2>
			<p className="notice" data-tone={size.suffices ? undefined : "stop"}>
				<strong>{size.suffices ? "It gets its volts." : "Too much is lost on the way."}</strong> Where it
				loses most: {words(size.condition)}.
			</p>
			<Figures
				label="What it gets"
				figures={[
					{ name: "Current", value: amount(size.amps, "A"), source },
					{ name: "Across it", value: amount(size.volts, "V"), source },
					{ name: "Lost from the battery's plus", value: amount(size.feedVolts, "V"), source },
					{ name: "Lost to the battery's minus", value: amount(size.groundVolts, "V"), source },
					{
						name: "Allowed for both together",
						value: size.mostVolts === undefined ? undefined : amount(size.mostVolts, "V"),
						without: "each side is judged alone",
						source: SIZE_SOURCES.mostVolts,
					},
				]}
			/>
			<Drawing which={which} path={[size.part]} when={size.condition} />
		</article>
	);
}
