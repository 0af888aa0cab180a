/** The sheet before power: readings one at a time, the list of all, and what no reading can show. */
import type { ProveSheet } from "@loomwright/engine";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { useProveSheet } from "../../engine/hooks.js";
import { Choice } from "../../shared/Choice.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { SavedState } from "../../shared/SavedState.js";
import { Bench } from "./Bench.js";
import { Computing } from "./Computing.js";
import { Limits } from "./Limits.js";
import { Progress } from "./Progress.js";
import { RowList } from "./RowList.js";
import { useSheetWork } from "./use-sheet-work.js";

const VIEWS = [
	{ value: "", label: "One at a time" },
	{ value: "list", label: "List" },
	{ value: "limits", label: "What it cannot show" },
] as const;
type View = (typeof VIEWS)[number]["value"];

export function Prove() {
	const { misfits } = useCar().car;
	const sheet = useProveSheet();
	return (
		<div className="page">
			{misfits.length > 0 && (
				<p className="notice" data-tone="warn">
					The recipe does not fit this car as a whole (see Changes), so the loom proved here is not what will
					be built.
				</p>
			)}
			{sheet.error ? (
				<>
					<h1>Prove</h1>
					<FaultNotice title="The sheet cannot be computed" error={sheet.error} />
				</>
			) : sheet.data ? (
				<Sheet sheet={sheet.data} />
			) : (
				<>
					<h1>Prove</h1>
					<Computing />
				</>
			)}
		</div>
	);
}

function Sheet({ sheet }: { sheet: ProveSheet }) {
	const [query, set] = useSettings();
	const work = useSheetWork();
	const view: View = VIEWS.find(({ value }) => value === query.get("view"))?.value ?? "";
	const row = Number(query.get("row") ?? 0);
	const open = (number: number) => set({ row: number === 0 ? "" : String(number), view: "" });
	return (
		<>
			<div className="page-head prove-head">
				<h1>Prove</h1>
				<Choice<View> label="" value={view} options={VIEWS} onChange={(to) => set({ view: to })} />
			</div>
			<Progress sheet={sheet} taken={work.taken} at={view === "" ? row : 0} />
			{view === "" && <Bench sheet={sheet} work={work} at={row} onRow={open} />}
			{view === "list" && <RowList sheet={sheet} work={work} onRow={open} />}
			{view === "limits" && <Limits sheet={sheet} />}
			<SavedState entry={work.entry} />
		</>
	);
}
