/** The recipe that costs least, circuit by circuit: what is done, what it costs, what else it could be. */
import { Button } from "@mantine/core";
import { useQuery } from "@tanstack/react-query";
import { useCar } from "../../app/car.js";
import { formatRoute } from "../../app/route.js";
import { askPlan } from "../../server/choosing.js";
import { ChoosingPage } from "../../shared/ChoosingPage.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { Proposed } from "./Proposed.js";
import { Prices } from "./wanted/Prices.js";
import { Wanted } from "./wanted/Wanted.js";

export function Plan() {
	const { job, tables } = useCar();
	const wanted = Object.keys(tables).some((name) => /^targets\./.test(name));
	const plan = useQuery({
		queryKey: ["plan", job.id],
		queryFn: () => askPlan(job.id),
		enabled: wanted,
		staleTime: Number.POSITIVE_INFINITY,
		retry: false,
	});
	return (
		<ChoosingPage stage="plan" title="Proposal">
			{!wanted ? (
				<section className="notice stack">
					<h2>Nothing is wanted of this car yet</h2>
					<p>
						A target says which circuits the converted car needs: a clutch switch to that pin of the control
						unit, reversing lamps by that switch. From that, the loom and the shop's prices, a recipe is
						proposed.
					</p>
					<p>
						State it below, or bring in the table targets.csv: docs/plan.md describes it, with an example.
					</p>
					<Button component="a" href={formatRoute({ job: job.id, stage: "versions" })}>
						Bring in a target
					</Button>
				</section>
			) : plan.error ? (
				<FaultNotice title="Nothing can be proposed" error={plan.error} again={() => plan.refetch()} />
			) : !plan.data ? (
				<Working what="The shop's server weighs every way to make each circuit" />
			) : (
				<Proposed proposal={plan.data} />
			)}
			<Wanted />
			{wanted && <Prices />}
		</ChoosingPage>
	);
}
