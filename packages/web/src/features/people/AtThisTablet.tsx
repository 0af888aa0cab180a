/** On the start screen: who works here, and for the owner the people of the shop and the guests of the job. */
import { Button, Modal, TextInput } from "@mantine/core";
import { useState } from "react";
import { usePerson } from "../../server/person.js";
import { useSession } from "../../server/session.js";
import { Guests } from "./Guests.js";
import { People } from "./People.js";
import { SetUpOwner } from "./SetUpOwner.js";

export function AtThisTablet() {
	const session = useSession().data;
	const [person, setPerson] = usePerson();
	// Stays open when the owner has been set up: the people come next.
	const [open, setOpen] = useState(false);
	const [guests, setGuests] = useState(false);
	const close = {
		onClose: () => setOpen(false),
		closeButtonProps: { "aria-label": "Close", size: "xl" },
	} as const;
	if (session?.who.role === "owner" || session?.who.role === "technician")
		return (
			<>
				<Button variant="default" onClick={() => setOpen(true)}>
					People and what they may sign
				</Button>
				<Modal opened={open} title="People" size="100%" {...close}>
					<People owner={session.who.role === "owner"} />
				</Modal>
				<Button variant="default" onClick={() => setGuests(true)}>
					Links for guests
				</Button>
				<Modal opened={guests} title="Links for guests" size="xl" {...close} onClose={() => setGuests(false)}>
					<Guests />
				</Modal>
			</>
		);
	if (session && session.who.role !== "bench") return null;
	return (
		<>
			<TextInput
				label="Who is at this tablet?"
				description="Your name goes with every entry into the job's history."
				value={person}
				maxLength={100}
				onChange={(event) => setPerson(event.currentTarget.value)}
			/>
			<Button variant="default" onClick={() => setOpen(true)}>
				Set up the owner
			</Button>
			<Modal opened={open} title="Set up the owner" size="lg" {...close}>
				<SetUpOwner />
			</Modal>
		</>
	);
}
