/** The other jobs of the shop. */
import { formatRoute } from "../../app/route.js";
import type { JobSummary } from "../../server/types.js";

export function JobList({ jobs, open }: { jobs: readonly JobSummary[]; open: string }) {
	const others = jobs.filter(({ id }) => id !== open);
	if (others.length === 0) return null;
	return (
		<section>
			<h2>Other jobs</h2>
			<ul className="row-list">
				{others.map(({ id, title, created }) => (
					<li key={id}>
						<a className="row" href={formatRoute({ job: id })}>
							<strong>{title}</strong>
							<span className="soft">since {created.slice(0, 10)}</span>
						</a>
					</li>
				))}
			</ul>
		</section>
	);
}
