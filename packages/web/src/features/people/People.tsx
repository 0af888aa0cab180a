/** Everyone in the shop and the matrix of which sorts of step each may sign; the owner changes it. */
import { NativeSelect } from "@mantine/core";
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { readPeople, setAbility } from "../../server/api.js";
import type { Ability, Person } from "../../server/types.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { AddPerson } from "./AddPerson.js";
import { Told } from "./Told.js";

const KEY = ["people"];

export function People({ owner }: { owner: boolean }) {
	const people = useQuery({ queryKey: KEY, queryFn: readPeople });
	const client = useQueryClient();
	const setting = useMutation({
		mutationFn: setAbility,
		networkMode: "always",
		onSettled: () => client.invalidateQueries({ queryKey: KEY }),
	});
	if (people.error)
		return (
			<FaultNotice title="The people cannot be fetched" error={people.error} again={() => people.refetch()} />
		);
	const all = people.data ?? [];
	return (
		<div className="stack">
			<p className="soft">
				Restraints, brakes, the start interlock, fuel and first power always take two people. After five steps
				signed together with someone, an apprentice may sign other steps of that sort alone.
			</p>
			<div className="matrix">
				<table className="plain-table">
					<thead>
						<tr>
							<th scope="col">Sort of step</th>
							{all.map(({ id, name, role, active }) => (
								<th key={id} scope="col">
									{name}
									<span className="soft">
										{" "}
										{role}
										{active ? "" : ", left"}
									</span>
								</th>
							))}
						</tr>
					</thead>
					<tbody>
						{all[0]?.abilities.map(({ sort, critical }, row) => (
							<tr key={sort}>
								<th scope="row">
									{sort}
									{critical && <span className="tag">two people</span>}
								</th>
								{all.map((person) => (
									<td key={person.id}>
										<Cell
											person={person}
											cell={person.abilities[row]!}
											onSet={
												owner ? (ability) => setting.mutate({ person: person.id, sort, ability }) : undefined
											}
										/>
									</td>
								))}
							</tr>
						))}
					</tbody>
				</table>
			</div>
			<Told error={setting.error} />
			{owner && <AddPerson onAdded={() => client.invalidateQueries({ queryKey: KEY })} />}
		</div>
	);
}

interface CellProps {
	readonly person: Person;
	readonly cell: Ability;
	readonly onSet: ((ability: string | null) => void) | undefined;
}

const WORDS: Readonly<Record<Ability["ability"], string>> = {
	alone: "may sign",
	second: "with a second person",
	"not yet": "not yet",
};

function Cell({ person, cell, onSet }: CellProps) {
	const practice = cell.supervised > 0 ? `, ${cell.supervised} signed together` : "";
	if (!onSet || person.role === "owner") return <span>{WORDS[cell.ability] + practice}</span>;
	const set = cell.because === "owner" ? cell.ability : "";
	return (
		<NativeSelect
			aria-label={`${person.name}, ${cell.sort}`}
			value={set}
			onChange={(event) => onSet(event.currentTarget.value === "" ? null : event.currentTarget.value)}
			data={[
				{
					value: "",
					label:
						set === "" ? `${WORDS[cell.ability]} (by ${cell.because}${practice})` : "by role and practice",
				},
				...Object.entries(WORDS).map(([value, label]) => ({ value, label })),
			]}
		/>
	);
}
