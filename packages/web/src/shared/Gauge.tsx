/** A reading's band on a number line, with the computed value and, where there is one, what the meter showed. */
import type { Reading } from "@loomwright/engine";
import { numberLine } from "./gauge.js";
import { amount, scaleOf } from "./words.js";

interface GaugeProps {
	readonly reading: Reading;
	/** What the meter showed; undefined: nothing yet. */
	readonly shown?: number | undefined;
}

const WIDTH = 640;
const PAD = 34;
const AXIS = 58;

export function Gauge({ reading: { value, low, high, unit }, shown }: GaugeProps) {
	if (value === undefined || low === undefined || high === undefined) return null;
	const marks = [low, high, value, ...(shown === undefined ? [] : [shown])];
	const scale = scaleOf(Math.max(...marks.map(Math.abs)), unit);
	const line = numberLine(marks.map((mark) => mark / scale.by));
	const x = (v: number) => PAD + ((v / scale.by - line.from) / (line.to - line.from)) * (WIDTH - 2 * PAD);
	const band = `${amount(value, unit)}, between ${amount(low, unit)} and ${amount(high, unit)}`;
	return (
		<svg className="gauge" viewBox={`0 0 ${WIDTH} 104`} role="img" aria-label={`Number line: ${band}`}>
			<rect
				className="gauge-band"
				x={x(low)}
				y={AXIS - 22}
				width={Math.max(3, x(high) - x(low))}
				height={22}
				rx={3}
			/>
			<path className="gauge-axis" d={`M${PAD} ${AXIS}H${WIDTH - PAD}`} />
			{line.ticks.map((tick) => (
				<g key={tick}>
					<path className="gauge-axis" d={`M${x(tick * scale.by)} ${AXIS}v9`} />
					<text x={x(tick * scale.by)} y={AXIS + 27} textAnchor="middle">
						{tick.toFixed(line.decimals)}
					</text>
				</g>
			))}
			<text x={WIDTH - PAD} y={AXIS + 44} textAnchor="end">
				{scale.word}
			</text>
			<path className="gauge-value" d={`M${x(value)} ${AXIS}V${AXIS - 34}`} />
			{shown !== undefined && (
				<path className="gauge-shown" d={`M${x(shown)} ${AXIS - 4}l-9 -18h18z`}>
					<title>shown: {amount(shown, unit)}</title>
				</path>
			)}
		</svg>
	);
}
