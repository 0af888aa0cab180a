/** The differences per connector and cavity: connectors on one side, the cavities of the chosen one on the other. */
import { useMemo, useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { useChanges } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { Working } from "../../shared/Working.js";
import { count } from "../../shared/words.js";
import { CavityChanges } from "./CavityChanges.js";
import { FilterBar } from "./FilterBar.js";
import { filterGroups, groupChanges, placesOf } from "./groups.js";

export function ByConnector() {
	const { car } = useCar();
	const changes = useChanges();
	const [query, set] = useSettings();
	const [text, setText] = useState("");
	const groups = useMemo(
		() => (changes.data ? groupChanges(changes.data, car.delivered, car.converted) : []),
		[changes.data, car],
	);
	if (changes.error) return <FaultNotice title="The looms cannot be compared" error={changes.error} />;
	if (!changes.data) return <Working what="Comparing the two looms" />;
	const place = query.get("place") ?? "";
	const shown = filterGroups(groups, text, place);
	const chosen = query.get("connector") ?? "";
	const open = shown.find(({ id }) => id === chosen);
	return (
		<>
			<FilterBar
				text={text}
				onText={setText}
				place={place}
				places={placesOf(groups)}
				onPlace={(p) => set({ place: p })}
			/>
			<p className="soft">
				{count(
					shown.reduce((sum, group) => sum + group.changes.length, 0),
					"difference",
				)}{" "}
				at {count(shown.length, "connector or part", "connectors and parts")}
			</p>
			<ListAndDetail
				label="Connectors"
				rows={shown.map(({ id, label, place: at, changes: list }) => ({
					id,
					title: id,
					text: [label, at].filter(Boolean).join(", "),
					end: String(list.length),
					endLabel: count(list.length, "difference"),
				}))}
				open={open?.id ?? ""}
				onOpen={(connector) => set({ connector })}
				empty="No connector fits this filter."
			>
				{open && <CavityChanges key={open.id} group={open} />}
			</ListAndDetail>
		</>
	);
}
