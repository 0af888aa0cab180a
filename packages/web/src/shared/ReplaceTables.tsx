/** What replacing tables would change, told before it is done; every error by file, row and column. Nothing half-applied. */
import { Button } from "@mantine/core";
import { useMutation, useQuery } from "@tanstack/react-query";
import { useCar } from "../app/car.js";
import { putTables, type TableChangesWanted, tryTables } from "../server/choosing.js";
import { useWriter } from "../server/session.js";
import { FaultNotice } from "./FaultNotice.js";
import { RowChanges } from "./RowChanges.js";
import { Working } from "./Working.js";
import { count } from "./words.js";

interface ReplaceTablesProps {
	/** Id of the job whose tables they are; left out: the open one. */
	readonly job?: string;
	readonly tables: TableChangesWanted;
	/** On the button that does it. */
	readonly confirm: string;
	/** On the button that does not; left out: that all stays as it is. */
	readonly back?: string;
	readonly onCancel: () => void;
	/** Left out: the open car is opened anew, since everything on the screens was computed from the tables before. */
	readonly onDone?: () => void;
}

export function ReplaceTables({
	job: id,
	tables,
	confirm,
	back = "Leave it as it is",
	onCancel,
	onDone = () => window.location.reload(),
}: ReplaceTablesProps) {
	const open = useCar().job.id;
	const job = id ?? open;
	const { person } = useWriter();
	const trial = useQuery({
		queryKey: ["trial", job, tables],
		queryFn: () => tryTables(job, tables),
		retry: false,
		gcTime: 0,
	});
	const replace = useMutation({
		mutationFn: () => putTables(job, tables, person),
		networkMode: "always",
		onSuccess: onDone,
	});
	const cancel = (
		<Button variant="default" onClick={onCancel}>
			{back}
		</Button>
	);
	if (trial.error)
		return (
			<div className="stack">
				<FaultNotice title="Nothing was taken in" error={trial.error} />
				{cancel}
			</div>
		);
	if (!trial.data) return <Working what="Trying the tables on this car" />;
	const { misfits, tables: changed } = trial.data;
	const same = changed.every(({ rows }) => rows.length === 0);
	return (
		<div className="stack">
			<RowChanges tables={changed} />
			{misfits.length > 0 && (
				<div className="notice stack" data-tone="warn">
					<p>{count(misfits.length, "step", "steps")} of the recipe would not fit this car:</p>
					<ul>
						{misfits.map(({ step, row, column, problem, wanted }) => (
							<li key={`${row} ${column} ${problem}`}>
								Step {step} (row {row}, column {column}): {problem}. What would be right: {wanted}.
							</li>
						))}
					</ul>
				</div>
			)}
			{replace.error && <FaultNotice title="Nothing was taken in" error={replace.error} />}
			<div className="buttons">
				{!same && (
					<Button loading={replace.isPending} onClick={() => replace.mutate()}>
						{confirm}
					</Button>
				)}
				{cancel}
			</div>
		</div>
	);
}
