/** Cross-sections side by side, their areas in proportion: what is there, and the smallest that does. */

interface DiscsProps {
	readonly mm2: number;
	/** Undefined: no size on the shelf does. */
	readonly needed: number | undefined;
}

const SIZE = 96;

export function Discs({ mm2, needed }: DiscsProps) {
	const largest = Math.max(mm2, needed ?? 0);
	const radius = (area: number) => Math.max(3, (SIZE / 2 - 12) * Math.sqrt(area / largest));
	const words = needed === undefined ? "no size on the shelf does" : `${needed} mm² would do`;
	return (
		<figure className="discs">
			<svg width={2 * SIZE} height={SIZE} role="img" aria-label={`Cross-sections: ${mm2} mm², ${words}`}>
				<circle className="disc-skin" cx={SIZE / 2} cy={SIZE / 2} r={radius(mm2) + 7} />
				<circle className="disc-copper" cx={SIZE / 2} cy={SIZE / 2} r={radius(mm2)} />
				{needed !== undefined && (
					<circle className="disc-needed" cx={1.5 * SIZE} cy={SIZE / 2} r={radius(needed)} />
				)}
			</svg>
			<figcaption>
				<span>{mm2} mm² here</span>
				<span>{words}</span>
			</figcaption>
		</figure>
	);
}
