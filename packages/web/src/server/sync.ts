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
		const opened = () => {
			sendNow();
			// What came while this tablet was away.
			void client.invalidateQueries({ queryKey: ["entries"] });
			void client.invalidateQueries({ queryKey: ["state"] });
			void client.invalidateQueries({ queryKey: ["repairs"] });
		};
		const heard = (job: string) => {
			void client.invalidateQueries({ queryKey: ["entries", job] });
			void client.invalidateQueries({ queryKey: ["state", job] });
		};
		let live = listen(opened, heard);
		window.addEventListener("online", sendNow);
		const again = setInterval(() => {
			sendNow();
			// A browser gives up for good where something answers for the server, such as a proxy while it starts.
			if (live.readyState === EventSource.CLOSED) live = listen(opened, heard);
		}, AGAIN_MS);
		sendNow();
		return () => {
			live.close();
			window.removeEventListener("online", sendNow);
			clearInterval(again);
		};
	}, [signedIn, account, client]);
}

/** Hears of entries as they are stored, by server-sent events. */
function listen(opened: () => void, heard: (job: string) => void): EventSource {
	const live = new EventSource("/api/v1/live");
	live.addEventListener("open", opened);
	live.addEventListener("entry", (event) => {
		heard((JSON.parse((event as MessageEvent<string>).data) as { job: string }).job);
	});
	return live;
}
