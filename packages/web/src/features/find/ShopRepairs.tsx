/** What this shop's own repairs make of the chances: the counts, and each repair, which can be taken out again. */
import type { KindRate, ShopRates, Which } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useRates } from "../../engine/hooks.js";
import { useWriteEntry } from "../../server/hooks.js";
import { useRepairsHere } from "../../server/known.js";
import type { ShopRepairs as Repairs } from "../../server/types.js";
import { SavedState } from "../../shared/SavedState.js";
import { count } from "../../shared/words.js";
import { AskWhy } from "../people/AskWhy.js";
import { chanceWords, timesFactor } from "./chance-words.js";

export function ShopRepairs({ which }: { readonly which: Which }) {
	const { cars, repairs } = useRepairsHere();
	const [open, setOpen] = useState(false);
	const counted = repairs.filter(({ takenBack }) => takenBack === "").length;
	return (
		<section className="card stack" aria-label="This shop's own repairs">
			<h2>This shop's own repairs</h2>
			<p className="soft">
				{cars === 0
					? "None is entered yet: chances are those of the tables. Open a fault above and say that it was it."
					: `Counted into the chances above: ${count(counted, "repair")} on ${count(cars, "car")}.`}
			</p>
			{cars > 0 && (
				<Button variant="default" aria-expanded={open} onClick={() => setOpen(!open)}>
					{open ? "Close the counts" : "Show the counts"}
				</Button>
			)}
			{open && <Counts which={which} />}
			{open && <RepairList repairs={repairs} />}
		</section>
	);
}

function Counts({ which }: { readonly which: Which }) {
	const { data } = useRates(which);
	if (!data) return null;
	const met = data.kinds.filter(({ found }) => found > 0);
	const others = data.kinds.filter(({ found, items }) => found === 0 && items > 0);
	return (
		<>
			<RateList rates={met} cars={data.cars} />
			{data.people.some(({ found }) => found > 0) && <People people={data.people} />}
			<details className="fold">
				<summary>{count(others.length, "kind")} not met yet</summary>
				<RateList rates={others} cars={data.cars} />
			</details>
		</>
	);
}

const RateList = ({ rates, cars }: { readonly rates: readonly KindRate[]; readonly cars: number }) => (
	<ul className="predicted">
		{rates.map(({ kind, touched, found, expected, before, after, factor, items }) => (
			<li key={`${kind} ${touched}`}>
				<span className="cap">{kind}</span>
				<span className="soft">{touched ? "where hands were" : "where nobody was"}</span>
				<dl>
					<Figure name="found" value={String(found)} />
					{items === 0 ? (
						<Figure name="on this car" value="none can be" />
					) : (
						<>
							<Figure
								name={`expected on ${count(cars, "car")}`}
								value={String(Number(expected.toPrecision(2)))}
							/>
							<Figure name="chance of each, before" value={chanceWords(before)} />
							<Figure name="after" value={`${chanceWords(after)}, ${timesFactor(factor)}`} />
						</>
					)}
				</dl>
			</li>
		))}
	</ul>
);

const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
	<div>
		<dt>{name}</dt>
		<dd>{value}</dd>
	</div>
);

const People = ({ people }: Pick<ShopRates, "people">) => (
	<p className="soft">
		By whose work it was:{" "}
		{people
			.map(
				({ person, found, expected, factor }) =>
					`${person} ${found}, expected ${Number(expected.toPrecision(2))} (${timesFactor(factor)})`,
			)
			.join("; ")}
		.
	</p>
);

function RepairList({ repairs }: Pick<Repairs, "repairs">) {
	const { job, jobs } = useCar();
	const entry = useWriteEntry();
	return (
		<>
			<h3>Each repair</h3>
			<ul className="row-list">
				{repairs.map(({ entry: id, job: own, kind, where, person, worked, time, takenBack }) => (
					<li key={id} className="row form-row">
						<span className="row-main">
							<strong className="cap">{kind}</strong>
							<span>{where}</span>
							<span className="soft">
								Found by {person}, {new Date(time).toLocaleDateString()}
								{worked === "" ? "" : `; work of ${worked}`}
								{own === job.id ? "" : `; ${jobs.find((one) => one.id === own)?.title ?? own}`}
							</span>
						</span>
						{takenBack !== "" ? (
							<span className="tag">taken out</span>
						) : own === job.id ? (
							<AskWhy
								button="Take out"
								label={`Take out: ${kind}, ${where}`}
								question="Why it was not that"
								onReason={(text) => entry.write({ kind: "correction", body: { of: id, text } })}
							/>
						) : (
							<span className="soft">taken out on its own job</span>
						)}
					</li>
				))}
			</ul>
			<SavedState entry={entry} />
		</>
	);
}
