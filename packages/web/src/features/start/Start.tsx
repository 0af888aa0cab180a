/** The first screen: the job, its line of work with what stands at each stage, and who is at the tablet. */
import { Button } from "@mantine/core";
import { useCar } from "../../app/car.js";
import { LINE } from "../../app/line.js";
import { formatRoute } from "../../app/route.js";
import { AtThisTablet } from "../people/AtThisTablet.js";
import { OpenQuestions } from "../people/OpenQuestions.js";
import { History } from "./History.js";
import { JobList } from "./JobList.js";
import { useStanding } from "./standing.js";

export function Start() {
	const { job, jobs, car } = useCar();
	const standing = useStanding();
	const { parts, wires, contacts } = car.delivered;
	return (
		<div className="start">
			<section className="stack">
				<h1>{job.title}</h1>
				<p className="lead">
					{wires.size} wires, {contacts.size} contacts and {parts.size} parts as delivered; the recipe has{" "}
					{car.recipe.length} steps.
				</p>
				<ol className="start-line">
					{LINE.map(({ stage, name, asks }, k) => (
						<li key={stage}>
							<a href={formatRoute({ job: job.id, stage })}>
								<span className="start-number">{k + 1}</span>
								<span>
									<strong>{name}</strong>
									<span className="soft">{asks}</span>
								</span>
								<span className="start-standing">{standing[stage]}</span>
							</a>
						</li>
					))}
				</ol>
				<Button component="a" href={formatRoute({ job: job.id, stage: "changes" })} size="xl">
					Begin with the changes
				</Button>
			</section>
			<aside className="stack">
				<AtThisTablet />
				<OpenQuestions />
				<History />
				<JobList jobs={jobs} open={job.id} />
			</aside>
		</div>
	);
}
