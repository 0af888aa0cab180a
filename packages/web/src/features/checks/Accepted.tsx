/** Of one finding: who accepted it, when and why, whether that still covers it; and accepting it. */
import type { Covering } from "@loomwright/engine";
import { useWriteEntry } from "../../server/hooks.js";
import { useQueue } from "../../server/queue/use-queue.js";
import { useSession, useWriter } from "../../server/session.js";
import type { FindingAcceptance } from "../../server/types.js";
import { SavedState } from "../../shared/SavedState.js";
import { AskWhy } from "../people/AskWhy.js";
import { notAccepting } from "./may-accept.js";
import type { FoundAndAccepted } from "./use-acceptances.js";

export function Accepted({ of: { grounded, all, accepted } }: { of: FoundAndAccepted }) {
	const role = useSession().data?.who.role ?? "nobody";
	const { person } = useWriter();
	const { waiting } = useQueue();
	const entry = useWriteEntry();
	const unsent = waiting.find(
		({ entry: { kind, body } }) =>
			kind === "acceptance" && JSON.stringify(body.finding) === JSON.stringify(grounded.finding),
	);
	const may = notAccepting(role, person, grounded.finding.severity);
	return (
		<section className="stack" aria-label="Acceptance">
			{all.map((one) => (
				<AcceptedBy key={one.acceptance.entry} one={one} />
			))}
			{unsent && (
				<p className="notice" data-tone="warn" role="status">
					Accepted by {unsent.entry.person}: {unsent.refused || "waits to be sent"}.
				</p>
			)}
			{!accepted && !unsent && may !== "" && <p className="soft">{may}</p>}
			{!accepted && !unsent && may === "" && (
				<AskWhy
					button="Accept it as it is"
					label="Accept this finding"
					question="Why may it stay as it is?"
					onReason={(text) => entry.write({ kind: "acceptance", body: { ...grounded, text } })}
				/>
			)}
			{entry.error && <SavedState entry={entry} />}
		</section>
	);
}

function AcceptedBy({ one: { acceptance, changed } }: { one: Covering<FindingAcceptance> }) {
	const covers = changed.length === 0;
	return (
		<div className="notice stack" {...(covers ? {} : { "data-tone": "warn" })}>
			<AcceptanceWords acceptance={acceptance} />
			{!covers && (
				<>
					<p>
						<strong>That was accepted as it was then, and no longer covers it:</strong>
					</p>
					<ul className="finding-changed">
						{changed.map((line) => (
							<li key={line}>{line}</li>
						))}
					</ul>
				</>
			)}
			<Withdraw acceptance={acceptance} />
		</div>
	);
}

export function AcceptanceWords({
	acceptance: { person, role, time, text },
}: {
	acceptance: FindingAcceptance;
}) {
	return (
		<p>
			<strong>
				Accepted by {person}
				{role === "bench" ? "" : `, ${role}`}
			</strong>{" "}
			<span className="soft">{new Date(time).toLocaleString()}</span>
			<br />
			{text}
		</p>
	);
}

const MAY_WITHDRAW: ReadonlySet<string> = new Set(["bench", "owner", "technician"]);

export function Withdraw({ acceptance: { entry: of, person } }: { acceptance: FindingAcceptance }) {
	const role = useSession().data?.who.role ?? "nobody";
	const { waiting } = useQueue();
	const entry = useWriteEntry();
	if (waiting.some(({ entry: { kind, body } }) => kind === "correction" && body.of === of))
		return <p className="soft">Taken back; that waits to be sent.</p>;
	if (!MAY_WITHDRAW.has(role)) return null;
	return (
		<div>
			<AskWhy
				button="Take the acceptance back"
				label={`Take back the acceptance by ${person}`}
				question="Why is it taken back?"
				onReason={(text) => entry.write({ kind: "correction", body: { of, text } })}
			/>
			{entry.error && <SavedState entry={entry} />}
		</div>
	);
}
