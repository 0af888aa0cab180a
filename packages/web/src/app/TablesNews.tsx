/** Says on every screen that somebody replaced tables of the open car: what is shown is of those before. */
import { Button } from "@mantine/core";
import { useEntries } from "../server/hooks.js";
import { NOBODY } from "../server/person.js";
import { useCar } from "./car.js";

export function TablesNews() {
	const { replaced } = useCar();
	const news = useEntries().data?.findLast(({ kind, place }) => kind === "tables" && place > replaced);
	if (!news) return null;
	const { files } = news.body as { files: readonly { name: string }[] };
	const who = news.person === NOBODY ? "Somebody" : news.person;
	return (
		<div className="notice news" data-tone="warn" role="status">
			<p>
				<strong>
					{who} replaced {files.map(({ name }) => name).join(", ")}.
				</strong>{" "}
				What is on this screen was computed from the tables before.
			</p>
			<Button onClick={() => window.location.reload()}>Open the car anew</Button>
		</div>
	);
}
