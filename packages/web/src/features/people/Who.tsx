/** In the head of every screen: who is signed in, with the quick switch, and what waits on this tablet. */
import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import { signOut } from "../../server/api.js";
import { useQueue } from "../../server/queue/use-queue.js";
import { useSession, useSessionChange } from "../../server/session.js";
import { count } from "../../shared/words.js";
import { SignIn } from "./SignIn.js";
import { Waiting } from "./Waiting.js";

export function Who() {
	const { data: session, refetch } = useSession();
	const { waiting } = useQueue();
	const [open, setOpen] = useState(false);
	const leaving = useSessionChange(signOut);
	const show = () => {
		// Someone may have come or gone since.
		void refetch();
		setOpen(true);
	};
	const who = session?.who;
	const known = who !== undefined && !["bench", "nobody"].includes(who.role);
	if (!known && waiting.length === 0) return null;
	return (
		<>
			<Button variant="default" className="who" onClick={show}>
				{known ? who.name : "This tablet"}
				{waiting.length > 0 && (
					<span className="tag" data-tone="warn">
						{count(waiting.length, "entry waits", "entries wait")}
					</span>
				)}
			</Button>
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title={known ? `${who.name}, ${who.role}` : "This tablet"}
				size="lg"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<div className="stack">
					<Waiting />
					{known && session && who.role !== "guest" && (
						<SignIn session={session} onDone={() => setOpen(false)} />
					)}
					{known && (
						<Button
							variant="default"
							onClick={() => leaving.mutate(undefined, { onSuccess: () => setOpen(false) })}
						>
							Sign out
						</Button>
					)}
				</div>
			</Modal>
		</>
	);
}
