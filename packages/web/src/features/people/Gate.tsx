/** Before everything else: a guest's link is opened, and where the shop has people, somebody signs in. */
import { type ReactNode, useEffect, useRef } from "react";
import { go, type Stage, useRoute } from "../../app/route.js";
import { openGuestLink } from "../../server/api.js";
import { useSession, useSessionChange } from "../../server/session.js";
import { useSync } from "../../server/sync.js";
import { SignIn } from "./SignIn.js";
import { Told } from "./Told.js";

interface GateProps {
	/** Frame for what is said before anyone is in. */
	readonly bare: (message: ReactNode) => ReactNode;
	readonly children: ReactNode;
}

/** What a guest looks at; the other screens are for working on the car. */
const FOR_GUESTS: ReadonlySet<Stage> = new Set<Stage>(["start", "changes", "checks", "reading"]);

export function Gate({ bare, children }: GateProps) {
	const session = useSession();
	const route = useRoute();
	const opening = useSessionChange(openGuestLink);
	const token = route.query.get("guest") ?? "";
	const role = session.data?.who.role;
	const wasGuest = useRef(false);
	if (role !== undefined && role !== "nobody") wasGuest.current = role === "guest";
	useSync();
	// biome-ignore lint/correctness/useExhaustiveDependencies: once for each link
	useEffect(() => {
		if (token !== "")
			opening.mutate(token, { onSuccess: () => go({ job: route.job, stage: route.stage }, true) });
	}, [token]);
	if (opening.error) return bare(<Told error={opening.error} />);
	if (token !== "") return null;
	if (role === "nobody" && wasGuest.current)
		return bare(<Told error={new Error("This link has ended. Ask the shop for a new one")} />);
	if (role === "nobody") return bare(<SignIn session={session.data!} />);
	if (role === "guest" && !FOR_GUESTS.has(route.stage))
		return bare(
			<p className="notice">
				Guests look at the start page, the changes, the checks and readings. This page is for the shop's own
				work.
			</p>,
		);
	// Without an answer the car says that the server is away.
	return session.isFetched ? children : null;
}
