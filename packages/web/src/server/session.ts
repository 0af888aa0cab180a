/** Who is signed in on this tablet. */
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { readSession } from "./api.js";
import { NOBODY, usePerson } from "./person.js";
import type { Writer } from "./queue/queue.js";
import type { Session } from "./types.js";

const KEY = ["session"];
const AGAIN_MS = 5000;
/** A guest's link may have ended. */
const GUEST_MS = 30_000;

export const useSession = () =>
	useQuery({
		queryKey: KEY,
		queryFn: readSession,
		refetchInterval: ({ state }) => {
			if (state.error !== null || state.data?.who.role === "nobody") return AGAIN_MS;
			return state.data?.who.role === "guest" ? GUEST_MS : false;
		},
	});

/** Changes who is signed in; everything is then fetched anew. */
export function useSessionChange<Arguments>(act: (given: Arguments) => Promise<Session>) {
	const client = useQueryClient();
	return useMutation({
		mutationFn: act,
		networkMode: "always",
		onSuccess(session) {
			client.setQueryData(KEY, session);
			return client.invalidateQueries({ predicate: ({ queryKey }) => !FIXED.has(String(queryKey[0])) });
		},
	});
}

/** The session itself is new already; the open car does not depend on who looks at it. */
const FIXED = new Set(["session", "car", "job"]);

/** Under whose name entries are written: whoever is signed in, else the name given on this tablet. */
export function useWriter(): Writer {
	const [typed] = usePerson();
	const who = useSession().data?.who;
	if (who && who.account !== "") return { person: who.name, account: who.account };
	return { person: typed.trim() || NOBODY, account: "" };
}
