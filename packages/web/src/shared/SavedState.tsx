/** Whether the last entry is in the job's history yet. */
import { Button } from "@mantine/core";
import type { useWriteEntry } from "../server/hooks.js";

export function SavedState({
	entry,
}: {
	entry: Pick<ReturnType<typeof useWriteEntry>, "state" | "error" | "again">;
}) {
	if (entry.state === "pending") return <p className="soft">Writing it into the job's history …</p>;
	if (entry.state === "success") return <p className="soft">Written into the job's history.</p>;
	if (!entry.error) return null;
	return (
		<div className="notice stack" data-tone="warn" role="alert">
			<p>Not in the job's history yet: {entry.error.message}.</p>
			<Button variant="default" onClick={entry.again}>
				Write it again
			</Button>
		</div>
	);
}
