/** What to mind before touching anything. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
	if (cautions.length === 0) return null;
	return (
		<section className="notice stack" data-tone="warn">
			<h3>Mind this first</h3>
			<ul>
				{cautions.map((caution) => (
					<li key={caution}>{caution}</li>
				))}
			</ul>
		</section>
	);
}
