/** Rows of the car's tables to mend. */
import type { TableError } from "@loomwright/engine";

const SHOWN = 50;

export function TableErrorList({ errors }: { errors: readonly TableError[] }) {
	return (
		<>
			<p>
				{errors.length === 1 ? "One place" : `${errors.length} places`} in the tables must be mended first:
			</p>
			<div className="scroll-x">
				<table className="plain-table">
					<thead>
						<tr>
							<th>File</th>
							<th>Row</th>
							<th>Column</th>
							<th>What is wrong</th>
							<th>What would be right</th>
						</tr>
					</thead>
					<tbody>
						{errors.slice(0, SHOWN).map((error) => (
							<tr key={`${error.file} ${error.row} ${error.column} ${error.problem}`}>
								<td>{error.file}</td>
								<td>{error.row || "whole file"}</td>
								<td>{error.column || "whole row"}</td>
								<td>{error.problem}</td>
								<td>{error.wanted}</td>
							</tr>
						))}
					</tbody>
				</table>
			</div>
			{errors.length > SHOWN && <p>and {errors.length - SHOWN} more.</p>}
		</>
	);
}
