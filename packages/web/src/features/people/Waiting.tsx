/** Entries kept on this tablet until the server has them, and those it refused. */
import { Button } from "@mantine/core";
import { drop } from "../../server/queue/queue.js";
import { useQueue } from "../../server/queue/use-queue.js";
import { useWriter } from "../../server/session.js";
import { useFlush } from "../../server/sync.js";
import type { Waiting as WaitingEntry } from "../../server/types.js";

export function Waiting() {
	const { waiting, fault } = useQueue();
	const { account } = useWriter();
	const send = useFlush();
	if (waiting.length === 0) return null;
	return (
		<section className="stack">
			<h2>Waiting on this tablet</h2>
			{fault && <p className="soft">Last try: {fault.message}.</p>}
			<ul className="row-list">
				{waiting.map((one) => (
					<li key={one.order} className="waiting">
						<span>
							<strong>{one.entry.kind}</strong> by {one.entry.person},{" "}
							{new Date(one.entry.time).toLocaleString()}
							<span className="soft"> {stateWords(one, account)}</span>
						</span>
						{one.refused !== "" && (
							<Button variant="default" onClick={() => void drop(one.order)}>
								Take it away
							</Button>
						)}
					</li>
				))}
			</ul>
			<Button variant="default" onClick={() => void send()}>
				Send now
			</Button>
		</section>
	);
}

function stateWords({ entry, refused, toDo }: WaitingEntry, account: string): string {
	if (refused !== "") return `refused: ${refused}. ${toDo}`;
	return entry.account === account
		? "is sent when the network is back"
		: `is sent when ${entry.person} signs in`;
}
