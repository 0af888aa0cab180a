/** The recipe taken to another car of the kind: which steps apply, which need a decision, which cannot be done there. */
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { useTransfer } from "../../engine/choosing-hooks.js";
import { readJob } from "../../server/api.js";
import { ChoosingPage } from "../../shared/ChoosingPage.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { OtherCar, type PickedCar } from "./OtherCar.js";
import { Travelled } from "./Travelled.js";

export function Transfer() {
	const { job, jobs } = useCar();
	const [query, set] = useSettings();
	const [picked, setPicked] = useState<PickedCar>();
	const to = query.get("to") ?? "";
	const other = useQuery({
		queryKey: ["other-car", to],
		queryFn: () => readJob(to),
		enabled: to !== "" && picked === undefined,
	});
	const tables = picked?.tables ?? (to === "" ? undefined : other.data?.tables);
	const name = picked?.name ?? other.data?.title ?? to;
	const found = useTransfer(name, tables);
	return (
		<ChoosingPage stage="transfer" title="The recipe on another car">
			<OtherCar
				jobs={jobs.filter(({ id }) => id !== job.id)}
				chosen={picked ? "" : to}
				picked={picked?.name ?? ""}
				onJob={(id) => {
					setPicked(undefined);
					set({ to: id, verdict: "" });
				}}
				onFiles={(car) => {
					setPicked(car);
					set({ to: "", verdict: "" });
				}}
			/>
			{other.error && <FaultNotice title="The other car cannot be fetched" error={other.error} />}
			{found.error ? (
				<FaultNotice title="The other car cannot be opened" error={found.error} />
			) : tables === undefined ? (
				to !== "" && !other.error && <Working what="Fetching the other car" />
			) : !found.data ? (
				<Working what="Going through the recipe with both cars side by side" />
			) : (
				<Travelled found={found.data} name={name} to={picked ? "" : to} />
			)}
		</ChoosingPage>
	);
}
