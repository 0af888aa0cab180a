/** A reading's band on a number line, with the computed value and, where there is one, what the meter showed. */
import type { Reading } from "@loomwright/engine";
import { useElementSize } from "@mantine/hooks";
import { numberLine } from "./gauge.js";
import { amount, scaleOf } from "./words.js";

interface GaugeProps {
	readonly reading: Reading;
	/** What the meter showed; undefined: nothing yet. */
	readonly shown?: number | undefined;
}

const PAD = 30;
const AXIS = 44;
const HEIGHT = 92;
/** Width in px that a tick with its number needs. */
const TICK = 84;

export function Gauge({ reading: { value, low, high, unit }, shown }: GaugeProps) {
	const { ref, width } = useElementSize();
	if (value === undefined || low === undefined || high === undefined) return null;
	const marks = [low, high, value, ...(shown === undefined ? [] : [shown])];
	const scale = scaleOf(Math.max(...marks.map(Math.abs)), unit);
	const line = numberLine(
		marks.map((mark) => mark / scale.by),
		Math.max(2, (width - 2 * PAD) / TICK),
	);
	const x = (v: number) => PAD + ((v / scale.by - line.from) / (line.to - line.from)) * (width - 2 * PAD);
	const band = `${amount(value, unit)}, between ${amount(low, unit)} and ${amount(high, unit)}`;
	return (
		<div className="gauge" ref={ref}>
			{width > 0 && (
				<svg width={width} height={HEIGHT} role="img" aria-label={`Number line: ${band}`}>
					<rect
						className="gauge-band"
						x={x(low)}
						y={AXIS - 22}
						width={Math.max(3, x(high) - x(low))}
						height={22}
						rx={3}
					/>
					<path className="gauge-axis" d={`M${PAD} ${AXIS}H${width - PAD}`} />
					{line.ticks.map((tick) => (
						<g key={tick}>
							<path className="gauge-axis" d={`M${x(tick * scale.by)} ${AXIS}v9`} />
							<text x={x(tick * scale.by)} y={AXIS + 25} textAnchor="middle">
								{tick.toFixed(line.decimals)}
							</text>
						</g>
					))}
					<text x={width - PAD} y={AXIS + 43} textAnchor="end">
						{scale.word}
					</text>
					<path className="gauge-value" d={`M${x(value)} ${AXIS}V${AXIS - 34}`} />
					{shown !== undefined && (
						<path className="gauge-shown" d={`M${x(shown)} ${AXIS - 4}l-9 -18h18z`}>
							<title>shown: {amount(shown, unit)}</title>
						</path>
					)}
				</svg>
			)}
		</div>
	);
}
