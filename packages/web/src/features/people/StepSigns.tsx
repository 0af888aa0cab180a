/** Beside a step: that it was done, who answers for it, and what is missing. */
import { Button } from "@mantine/core";
import { useState } from "react";
import { useJobState, useWriteEntry } from "../../server/hooks.js";
import { useQueue } from "../../server/queue/use-queue.js";
import { useSession } from "../../server/session.js";
import type { StepState } from "../../server/types.js";
import { AskWhy } from "./AskWhy.js";
import { TakePhoto } from "./TakePhoto.js";

/** @param step as the history calls it, e.g. `recipe/01` */
export function StepSigns({ step, title }: { step: string; title: string }) {
	const state = useJobState().data;
	const guest = useSession().data?.who.role === "guest";
	const { waiting } = useQueue();
	const entry = useWriteEntry();
	const [more, setMore] = useState(false);
	const own = state?.steps.find((one) => one.step === step);
	const clash = state?.clashes.find((one) => one.step === step && one.settled === "");
	const unsent = waiting.filter(({ entry: one }) => "step" in one.body && one.body.step === step);
	return (
		<div className="step-signs">
			<span role="status">
				{own && <StepWords own={own} />}
				{clash && (
					<span className="tag" data-tone="warn">
						{clash.people.join(" and ")} entered this apart
					</span>
				)}
				{unsent.length > 0 && (
					<span className="tag" data-tone="warn">
						{unsent.map((one) => one.entry.kind).join(", ")}:{" "}
						{unsent.find((one) => one.refused !== "")?.refused ?? "waits to be sent"}
					</span>
				)}
			</span>
			{!guest && (
				<span className="step-acts">
					<Button
						variant="default"
						aria-label={`Done: ${title}`}
						onClick={() => entry.write({ kind: "step", body: { step } })}
					>
						Done
					</Button>
					<Button
						variant="default"
						aria-label={`Sign: ${title}`}
						onClick={() => entry.write({ kind: "sign-off", body: { step } })}
					>
						Sign
					</Button>
					{more ? (
						<>
							<AskWhy
								button="Hold"
								label={`Hold: ${title}`}
								question="Why must it wait?"
								onReason={(text) => entry.write({ kind: "hold", body: { step, text } })}
							/>
							<TakePhoto
								title={title}
								onPicture={(picture) => entry.write({ kind: "photo", body: { photo: "", step } }, picture)}
							/>
						</>
					) : (
						<Button variant="default" aria-label={`More: ${title}`} onClick={() => setMore(true)}>
							More
						</Button>
					)}
				</span>
			)}
		</div>
	);
}

function StepWords({ own }: { own: StepState }) {
	const names = (list: readonly { readonly person: string }[]) =>
		[...new Set(list.map(({ person }) => person))].join(", ");
	return (
		<>
			{own.done.length > 0 && <span className="soft">done by {names(own.done)} </span>}
			{own.signatures.length > 0 && <span className="soft">signed by {names(own.signatures)} </span>}
			<span className="tag" data-tone={own.complete ? undefined : "warn"}>
				{own.complete ? "complete" : own.missing}
			</span>
		</>
	);
}
