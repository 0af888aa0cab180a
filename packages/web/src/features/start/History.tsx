/** The newest entries of the job's history. */
import { useCar } from "../../app/car.js";
import { photoAddress } from "../../server/api.js";
import { useEntries } from "../../server/hooks.js";
import { entryWords } from "./entry-words.js";

const SHOWN = 5;

export function History() {
	const { car, job } = useCar();
	const loom = car.converted;
	const entries = useEntries();
	if (entries.error) return <p className="soft">The history cannot be fetched: {entries.error.message}.</p>;
	const newest = (entries.data ?? []).slice(-SHOWN).reverse();
	if (newest.length === 0) return null;
	return (
		<section className="stack">
			<h2>Newest in the history</h2>
			<ul className="history">
				{newest.map((entry) => {
					const { sort, text } = entryWords(entry, loom);
					return (
						<li key={entry.id}>
							<strong>{sort}</strong> {text}
							{entry.kind === "photo" && (
								<img
									className="history-photo"
									src={photoAddress(job.id, (entry.body as { photo: string }).photo)}
									alt={`${sort} ${text}`}
								/>
							)}
							<div className="soft">
								{entry.person || "the server"}, {new Date(entry.time).toLocaleString()}
							</div>
						</li>
					);
				})}
			</ul>
		</section>
	);
}
