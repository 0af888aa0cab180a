/** The frame of the pages on which it is chosen what is done: the way between them, and which recipe they speak of. */
import { useQuery } from "@tanstack/react-query";
import type { ReactNode } from "react";
import { useCar } from "../app/car.js";
import { LINE } from "../app/line.js";
import { formatRoute, type Stage } from "../app/route.js";
import { readVersions } from "../server/choosing.js";
import { useEntries } from "../server/hooks.js";
import { versionWords } from "./version-words.js";

interface ChoosingPageProps {
	readonly stage: Stage;
	readonly title: string;
	readonly tools?: ReactNode;
	readonly children: ReactNode;
}

const PAGES = LINE.find(({ stage }) => stage === "plan")?.pages ?? [];

export function ChoosingPage({ stage, title, tools, children }: ChoosingPageProps) {
	const { job, recipe } = useCar();
	return (
		<div className="page">
			<div className="housing-row">
				<nav className="housing" aria-label="Choosing">
					{PAGES.map((page) => (
						<a
							key={page.stage}
							href={formatRoute({ job: job.id, stage: page.stage })}
							aria-current={page.stage === stage ? "page" : undefined}
						>
							{page.name}
						</a>
					))}
				</nav>
				<p className="recipe-stands">{versionWords(recipe)}</p>
			</div>
			<div className="page-head">
				<h1>{title}</h1>
				{tools}
			</div>
			{children}
		</div>
	);
}

/** The versions of the recipe, oldest first; asked anew when somebody replaces tables. */
export function useVersions() {
	const { job } = useCar();
	const replaced = useEntries().data?.filter(({ kind }) => kind === "tables").length ?? 0;
	return useQuery({ queryKey: ["versions", job.id, replaced], queryFn: () => readVersions(job.id) });
}
