/** Adds a person with a name, a role and a first PIN. */
import { TextInput } from "@mantine/core";
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { addPerson } from "../../server/api.js";
import type { Person } from "../../server/types.js";
import { Choice } from "../../shared/Choice.js";
import { PinPad } from "./PinPad.js";
import { Told } from "./Told.js";

const ROLES: readonly { readonly value: Person["role"]; readonly label: string }[] = [
	{ value: "technician", label: "Technician" },
	{ value: "apprentice", label: "Apprentice" },
	{ value: "owner", label: "Owner" },
];

export function AddPerson({ onAdded }: { onAdded: () => unknown }) {
	const [name, setName] = useState("");
	const [role, setRole] = useState<Person["role"]>("technician");
	const adding = useMutation({
		mutationFn: addPerson,
		networkMode: "always",
		onSuccess() {
			setName("");
			onAdded();
		},
	});
	return (
		<section className="stack sign-in">
			<h2>Add a person</h2>
			<TextInput
				label="Name"
				value={name}
				maxLength={60}
				onChange={(event) => setName(event.currentTarget.value)}
			/>
			<Choice label="Role" value={role} options={ROLES} onChange={setRole} />
			<PinPad
				label="First PIN"
				action="Add"
				busy={adding.isPending || name.trim() === ""}
				onPin={(pin) => name.trim() !== "" && adding.mutate({ name: name.trim(), role, pin })}
			/>
			<Told error={adding.error} />
		</section>
	);
}
