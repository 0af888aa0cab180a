/** Figures, each with where it comes from. */

export interface Figure {
	readonly name: string;
	/** Undefined: there is none, and `without` says so. */
	readonly value: string | undefined;
	readonly without?: string;
	/** Condition, in words. */
	readonly when?: string;
	readonly source: string;
}

interface Listed {
	readonly value: number;
	readonly source: string;
}

/** A figure out of a published table, with its own source; it may not be listed there. */
export const listed = (
	name: string,
	found: Listed | undefined,
	unit: string,
	without = "not listed for this size",
): Figure => ({ name, value: found && `${found.value} ${unit}`, without, source: found?.source ?? "" });

export const Figures = ({ label, figures }: { label: string; figures: readonly Figure[] }) => (
	<table className="plain-table sourced" aria-label={label}>
		<tbody>
			{figures.map(({ name, value, without = "none", when, source }) => (
				<tr key={name}>
					<td>
						{name}
						{when && <div className="soft">{when}</div>}
						<div className="source">{value === undefined ? "" : source.replaceAll("`", "")}</div>
					</td>
					<td>{value ?? without}</td>
				</tr>
			))}
		</tbody>
	</table>
);
