/** Before everything else: a guest's link is opened, and where the shop has people, somebody signs in. */
import { type ReactNode, useEffect } from "react";
import { go, useRoute } from "../../app/route.js";
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

export function Gate({ bare, children }: GateProps) {
	const session = useSession();
	const route = useRoute();
	const opening = useSessionChange(openGuestLink);
	const token = route.query.get("guest") ?? "";
	useSync();
	// biome-ignore lint/correctness/useExhaustiveDependencies: once for each link
	useEffect(() => {
		if (token !== "")
			opening.mutate(token, { onSuccess: () => go({ job: route.job, stage: route.stage }, true) });
	}, [token]);
	if (opening.error) return bare(<Told error={opening.error} />);
	if (token !== "") return null;
	if (session.data?.who.role === "nobody") return bare(<SignIn session={session.data} />);
	// Without an answer the car says that the server is away.
	return session.isFetched ? children : null;
}
