/** Rows of tables that come, go and change. */
import type { RowChange } from "@loomwright/engine";
import { count } from "./words.js";

interface RowChangesProps {
	readonly tables: readonly { readonly name: string; readonly rows: readonly RowChange[] }[];
}

/** Rows drawn at once. */
const MOST = 100;

const KINDS: Readonly<Record<RowChange["kind"], { word: string; tone: string | undefined }>> = {
	added: { word: "comes", tone: undefined },
	gone: { word: "goes", tone: "stop" },
	changed: { word: "changes", tone: "warn" },
};

export const RowChanges = ({ tables }: RowChangesProps) =>
	tables.map(({ name, rows }) => (
		<section key={name} className="stack">
			<h3>
				{name}: {rows.length === 0 ? "as it is now" : count(rows.length, "row")}
			</h3>
			<ul className="row-changes">
				{rows.slice(0, MOST).map(({ kind, key, row, cells }) => (
					<li key={`${kind} ${row} ${key}`}>
						<span className="tag" data-tone={KINDS[kind].tone}>
							{KINDS[kind].word}
						</span>
						<strong className="mono">{key}</strong>
						<span className="row-cells">
							{cells
								.filter(({ is, was }) => kind === "changed" || is !== key || was !== "")
								.map(({ column, was, is }) => (
									<span key={column}>
										<span className="soft">{column}</span>{" "}
										{kind === "changed" ? (
											<>
												{was || "empty"} <span className="arrow">→</span> {is || "empty"}
											</>
										) : (
											was || is
										)}
									</span>
								))}
						</span>
					</li>
				))}
			</ul>
			{rows.length > MOST && <p>and {rows.length - MOST} more.</p>}
		</section>
	));
