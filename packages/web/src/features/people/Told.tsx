/** Why something was refused, and what to do. */
import { ServerFault } from "../../server/api.js";

export function Told({ error }: { error: Error | null }) {
	if (!error) return null;
	return (
		<p className="notice" data-tone="stop" role="alert">
			{error.message}. {error instanceof ServerFault ? error.toDo : ""}
		</p>
	);
}
