/** What each wire, fuse, load and splice carries, and whether it is made for it; every figure with its source. */
import { NativeSelect, SegmentedControl, TextInput } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings, whichOf } from "../../app/use-setting.js";
import { useSizes } from "../../engine/choosing-hooks.js";
import type { Sizes as AllSizes } from "../../engine/protocol.js";
import { ChoosingPage } from "../../shared/ChoosingPage.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { LoomChoice } from "../../shared/LoomChoice.js";
import { Working } from "../../shared/Working.js";
import { count } from "../../shared/words.js";
import { FuseDetail } from "./FuseDetail.js";
import { LoadDetail } from "./LoadDetail.js";
import { loadId, SCOPES, type Scope, SORTS, type Sort, shownRows, sizeRows } from "./rows.js";
import { SpliceDetail } from "./SpliceDetail.js";
import { WireDetail } from "./WireDetail.js";

const SORT_WORDS: Readonly<Record<Sort, string>> = {
	wires: "Wires",
	fuses: "Fuses",
	loads: "Loads",
	splices: "Splices",
};
const SCOPE_WORDS: Readonly<Record<Scope, string>> = {
	worked: "What the recipe works on",
	all: "The whole loom",
	wrong: "What does not do",
};

export function Sizes() {
	const [query, set] = useSettings();
	const which = whichOf(query);
	const sizes = useSizes(which);
	return (
		<ChoosingPage
			stage="size"
			title="Sizes"
			tools={<LoomChoice value={which} onChange={(loom) => set({ loom, chosen: "" })} />}
		>
			{sizes.error ? (
				<FaultNotice title="The loom cannot be sized" error={sizes.error} />
			) : !sizes.data ? (
				<Working what="Solving every condition for what each wire carries" />
			) : (
				<Sized sizes={sizes.data} />
			)}
		</ChoosingPage>
	);
}

function Sized({ sizes }: { sizes: AllSizes }) {
	const { car } = useCar();
	const [query, set] = useSettings();
	const [text, setText] = useState("");
	const which = whichOf(query);
	const sort = SORTS.find((name) => name === query.get("sort")) ?? "wires";
	// Loads are not worked on, and nothing is as delivered.
	const scopes = sort === "loads" || which === "delivered" ? SCOPES.slice(1) : SCOPES;
	const scope = scopes.find((name) => name === query.get("scope")) ?? scopes[0]!;
	const { parts, joints } = car[which];
	const what = (id: string) => {
		const thing = parts.get(id) ?? joints.get(id);
		return thing?.label || thing?.place || id;
	};
	const all = sizeRows(sizes, sort, what);
	const rows = shownRows(all, scope, text);
	const chosen = query.get("chosen") ?? "";
	const wrong = all.filter(({ does }) => !does).length;
	return (
		<>
			<div className="filter">
				<SegmentedControl
					aria-label="What is sized"
					value={sort}
					data={SORTS.map((value) => ({ value, label: SORT_WORDS[value] }))}
					onChange={(value) => set({ sort: value, chosen: "" })}
				/>
				<NativeSelect
					aria-label="Which of them"
					value={scope}
					data={scopes.map((value) => ({ value, label: SCOPE_WORDS[value] }))}
					onChange={(event) => set({ scope: event.currentTarget.value, chosen: "" })}
				/>
				<TextInput
					aria-label="Search the sizes"
					placeholder="Search name or words"
					value={text}
					onChange={(event) => setText(event.currentTarget.value)}
				/>
			</div>
			<p className="soft aside">
				{count(rows.length, SORT_WORDS[sort].toLowerCase().slice(0, -1), SORT_WORDS[sort].toLowerCase())}{" "}
				shown.{" "}
				{wrong === 0
					? `All ${all.length} in the loom are made for what they carry.`
					: `${wrong} of ${all.length} in the loom do not do.`}
			</p>
			<ListAndDetail
				label={SORT_WORDS[sort]}
				rows={rows}
				open={detail(sizes, sort, chosen) ? chosen : ""}
				onOpen={(id) => set({ chosen: id })}
				empty="Nothing here fits this filter."
			>
				{detail(sizes, sort, chosen)}
			</ListAndDetail>
			<p className="soft">
				The figures do not replace those of the maker of the terminal, the cable or the car. Where a table is
				from memory or common practice, it says so under reference/.
			</p>
		</>
	);
}

function detail(sizes: AllSizes, sort: Sort, id: string) {
	switch (sort) {
		case "wires": {
			const wire = sizes.wires.find((one) => one.wire === id);
			return wire && <WireDetail key={id} size={wire} />;
		}
		case "fuses": {
			const fuse = sizes.fuses.find((one) => one.fuse === id);
			return fuse && <FuseDetail key={id} size={fuse} />;
		}
		case "loads": {
			const load = sizes.loads.find((one) => loadId(one) === id);
			return load && <LoadDetail key={id} size={load} />;
		}
		case "splices": {
			const splice = sizes.splices.find((one) => one.splice === id);
			return splice && <SpliceDetail key={id} size={splice} />;
		}
	}
}
