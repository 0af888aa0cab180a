/** What no considered fault explains. */
export function Contradictions({ lines }: { lines: readonly string[] }) {
	if (lines.length === 0) return null;
	return (
		<section className="notice stack" data-tone="warn">
			<h2>This does not fit together</h2>
			<ul>
				{lines.map((line) => (
					<li key={line}>{line}</li>
				))}
			</ul>
		</section>
	);
}
