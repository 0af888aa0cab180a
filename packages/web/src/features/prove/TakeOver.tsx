/** A tablet on which nothing was read yet may take over what the job's history holds. */
import type { ProveSheet } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { standing } from "../../server/history/taken-back.js";
import { useHistory } from "../../server/hooks.js";
import { count } from "../../shared/words.js";
import { rowsOf, takenInHistory } from "./rows.js";
import type { SheetWork } from "./use-sheet-work.js";

export function TakeOver({ sheet, work }: { sheet: ProveSheet; work: SheetWork }) {
	const entries = useHistory(standing);
	const known = takenInHistory(rowsOf(sheet), entries.data ?? []);
	const found = Object.keys(known).length;
	if (Object.keys(work.taken).length > 0 || found === 0) return null;
	return (
		<section className="notice stack">
			<p>
				The job's history has {count(found, "reading")} of this sheet. Take them over only if nothing on the
				car was changed since.
			</p>
			<Button variant="default" onClick={() => work.takeOver(known)}>
				Take over {count(found, "reading")}
			</Button>
		</section>
	);
}
