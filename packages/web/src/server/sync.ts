/** Keeps this tablet and the server in step: sends what waits, hears what others enter. */
import { useQueryClient } from "@tanstack/react-query";
import { useEffect } from "react";
import { flush } from "./queue/queue.js";
import { useSession, useWriter } from "./session.js";

/** Sent again after so long where nothing said that the network is back. */
const AGAIN_MS = 20_000;

/** Returns how to send now. */
export function useFlush(): () => Promise<void> {
	const client = useQueryClient();
	const { account } = useWriter();
	return async () => {
		for (const job of await flush(account)) {
			await client.invalidateQueries({ queryKey: ["entries", job] });
			await client.invalidateQueries({ queryKey: ["state", job] });
			await client.invalidateQueries({ queryKey: ["repairs"] });
		}
	};
}

export function useSync(): void {
	const client = useQueryClient();
	const session = useSession().data;
	const send = useFlush();
	const signedIn = session !== undefined && session.who.role !== "nobody";
	const account = session?.who.account ?? "";
	// biome-ignore lint/correctness/useExhaustiveDependencies: `send` is made anew each time; it depends on the account
	useEffect(() => {
		if (!signedIn) return;
		const sendNow = () => void send();
		const live = new EventSource("/api/v1/live");
		live.addEventListener("open", () => {
			sendNow();
			// What came while this tablet was away.
			void client.invalidateQueries({ queryKey: ["entries"] });
			void client.invalidateQueries({ queryKey: ["state"] });
			void client.invalidateQueries({ queryKey: ["repairs"] });
		});
		live.addEventListener("entry", (event) => {
			const { job } = JSON.parse((event as MessageEvent<string>).data) as { job: string };
			void client.invalidateQueries({ queryKey: ["entries", job] });
			void client.invalidateQueries({ queryKey: ["state", job] });
		});
		window.addEventListener("online", sendNow);
		const again = setInterval(sendNow, AGAIN_MS);
		sendNow();
		return () => {
			live.close();
			window.removeEventListener("online", sendNow);
			clearInterval(again);
		};
	}, [signedIn, account, client]);
}
