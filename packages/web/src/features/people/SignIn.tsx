/** Signing in by name and PIN; the same is the quick switch on a shared tablet. */
import { Button } from "@mantine/core";
import { useState } from "react";
import { signIn } from "../../server/api.js";
import { useSessionChange } from "../../server/session.js";
import type { Session } from "../../server/types.js";
import { PinPad } from "./PinPad.js";
import { Told } from "./Told.js";

interface SignInProps {
	readonly session: Session;
	readonly onDone?: () => void;
}

export function SignIn({ session, onDone }: SignInProps) {
	const [person, setPerson] = useState("");
	const signing = useSessionChange(signIn);
	const chosen = session.people.find(({ id }) => id === person);
	return (
		<section className="stack sign-in">
			<h2>Who is at this tablet?</h2>
			<div className="names">
				{session.people.map(({ id, name }) => (
					<Button
						key={id}
						{...(id === person ? {} : { variant: "default" })}
						aria-pressed={id === person}
						onClick={() => setPerson(id)}
					>
						{name}
					</Button>
				))}
			</div>
			{chosen && (
				<PinPad
					key={chosen.id}
					label={`PIN of ${chosen.name}`}
					action="Sign in"
					busy={signing.isPending}
					onPin={(pin) => signing.mutate({ person, pin }, { onSuccess: () => onDone?.() })}
				/>
			)}
			<Told error={signing.error} />
		</section>
	);
}
