/** Names and what they are, as pairs; empty ones are left out. */
export function Facts({ facts }: { facts: readonly (readonly [name: string, what: string])[] }) {
	return (
		<dl className="facts">
			{facts
				.filter(([, what]) => what.trim() !== "")
				.map(([name, what]) => (
					<div key={name}>
						<dt>{name}</dt>
						<dd>{what}</dd>
					</div>
				))}
		</dl>
	);
}
