/** What would happen if one thing were another: chosen on one side, what it does to the car on the other. */
import type { Supposed } from "@loomwright/engine";
import { SegmentedControl, TextInput } from "@mantine/core";
import { useMemo, useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { ChoosingPage } from "../../shared/ChoosingPage.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { Suppose } from "./Suppose.js";
import { SORTS, type Sort, subjectsOf } from "./subjects.js";

const SORT_WORDS: Readonly<Record<Sort, string>> = {
	wires: "Wires",
	contacts: "Contacts",
	parts: "Parts",
	joints: "Joints",
	recipe: "Steps",
};

/** Rows drawn at once; more words find the others. */
const MOST = 120;

export function WhatIf() {
	const { car } = useCar();
	const [query, set] = useSettings();
	const [text, setText] = useState("");
	const chosen = query.get("subject") ?? "";
	const sort =
		SORTS.find((name) => name === (query.get("sort") ?? chosen.split("/")[0])) ?? ("wires" satisfies Sort);
	const all = useMemo(() => subjectsOf(car, sort), [car, sort]);
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	const found = all.filter(({ name, text: what }) =>
		words.every((word) => `${name} ${what}`.toLowerCase().includes(word)),
	);
	const open = all.find(({ id }) => id === chosen);
	// What is chosen is in sight, wherever it stands among the others.
	const shown = found.slice(0, MOST);
	if (open && found.includes(open) && !shown.includes(open)) shown.unshift(open);
	return (
		<ChoosingPage stage="what-if" title="What if">
			<p className="lead aside">
				Suppose one thing were another. Nothing is stored: the tables stay as they are, and what would be
				different is told.
			</p>
			<div className="filter">
				<SegmentedControl
					aria-label="What is supposed to be another"
					value={sort}
					data={SORTS.map((value) => ({ value, label: SORT_WORDS[value] }))}
					onChange={(value) => set({ sort: value, ...NOTHING })}
				/>
				<TextInput
					aria-label="Search what could be another"
					placeholder="Search name, place or words"
					value={text}
					onChange={(event) => setText(event.currentTarget.value)}
				/>
			</div>
			<ListAndDetail
				label={SORT_WORDS[sort]}
				rows={shown.map(({ id, name, text: what }) => ({
					...{ id, title: name, text: what, end: "", endLabel: "" },
				}))}
				open={open?.id ?? ""}
				onOpen={(subject) => set({ ...NOTHING, subject })}
				empty="Nothing here has these words."
			>
				{open && (
					<Suppose
						key={open.id}
						subject={open}
						supposed={supposedOf(query, open.row)}
						onSuppose={(supposed) => set({ ...NOTHING, subject: open.id, ...settingsOf(supposed) })}
					/>
				)}
			</ListAndDetail>
			{found.length > MOST && (
				<p className="soft">
					The first {MOST} of {found.length} are listed: search for the others.
				</p>
			)}
		</ChoosingPage>
	);
}

const NOTHING = { subject: "", column: "", cell: "", without: "" };

function supposedOf(
	query: URLSearchParams,
	{ table, row }: { table: string; row: string },
): Supposed | undefined {
	if (query.get("without") === "yes" && table === "recipe") return { without: row };
	const column = query.get("column") ?? "";
	return column === "" ? undefined : { table, row, column, cell: query.get("cell") ?? "" };
}

const settingsOf = (supposed: Supposed) =>
	"without" in supposed ? { without: "yes" } : { column: supposed.column, cell: supposed.cell };
