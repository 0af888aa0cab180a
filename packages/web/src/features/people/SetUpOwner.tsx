/** Sets up the owner; from then on everyone signs in, and the shop can be served to other tablets. */
import { TextInput } from "@mantine/core";
import { useState } from "react";
import { setUpOwner } from "../../server/api.js";
import { useSessionChange } from "../../server/session.js";
import { PinPad } from "./PinPad.js";
import { Told } from "./Told.js";

export function SetUpOwner() {
	const [name, setName] = useState("");
	const setting = useSessionChange(setUpOwner);
	return (
		<section className="stack sign-in">
			<p>
				From then on everyone signs in with a PIN, entries carry their names for good, and critical steps need
				two people. Other tablets can then be let in (docs/shop.md).
			</p>
			<TextInput
				label="Name of the owner"
				value={name}
				maxLength={60}
				onChange={(event) => setName(event.currentTarget.value)}
			/>
			<PinPad
				label="PIN of the owner"
				action="Set up"
				busy={setting.isPending || name.trim() === ""}
				onPin={(pin) => name.trim() !== "" && setting.mutate({ name: name.trim(), pin })}
			/>
			<Told error={setting.error} />
		</section>
	);
}
