/** An address that names a job this shop does not have: said at once, with the jobs there are. */
import type { JobSummary } from "../server/types.js";
import { formatRoute } from "./route.js";

export function NoSuchJob({ id, jobs }: { id: string; jobs: readonly JobSummary[] }) {
	return (
		<section className="page">
			<div className="notice stack" data-tone="stop" role="alert">
				<h1>There is no job "{id}"</h1>
				<p>The address names a job that this shop does not have, or that you may not look at.</p>
			</div>
			<h2>Jobs of this shop</h2>
			<ul className="row-list job-list">
				{jobs.map((job) => (
					<li key={job.id}>
						<a className="row" href={formatRoute({ job: job.id })}>
							<strong>{job.title}</strong>
							<span className="soft unbroken">since {job.created.slice(0, 10)}</span>
						</a>
					</li>
				))}
			</ul>
		</section>
	);
}
