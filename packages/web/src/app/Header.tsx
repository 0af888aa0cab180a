/** The head of every screen: name of the job, the line of work drawn as one wire through its stages, light or dark. */
import { UnstyledButton } from "@mantine/core";
import { Who } from "../features/people/Who.js";
import { useOptionalCar } from "./car.js";
import { LINE, placeOnLine } from "./line.js";
import { formatRoute, type Stage } from "./route.js";
import { SchemeSwitch } from "./SchemeSwitch.js";

export function Header({ stage }: { stage: Stage }) {
	const job = useOptionalCar()?.job;
	const at = placeOnLine(stage);
	return (
		<header className="head">
			<a
				className="head-job"
				href={formatRoute({ job: job?.id ?? "" })}
				aria-current={stage === "start" ? "page" : undefined}
			>
				<span className="head-app">Loomwright</span>
				<span className="head-title">{job?.title ?? "No job open"}</span>
			</a>
			<nav className="line" aria-label="The line of work">
				{LINE.map((entry, k) => (
					<UnstyledButton
						key={entry.stage}
						component="a"
						href={formatRoute({ job: job?.id ?? "", stage: entry.stage })}
						className="line-stage"
						data-done={k < at || undefined}
						aria-current={k === at ? "page" : undefined}
					>
						<span className="line-joint" aria-hidden="true" />
						{entry.name}
					</UnstyledButton>
				))}
			</nav>
			<div className="head-own">
				<Who />
				<SchemeSwitch />
			</div>
		</header>
	);
}
