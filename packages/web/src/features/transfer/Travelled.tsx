/** The recipe's steps as they fare on the other car, what they would leave bare there, and how the two cars differ. */
import { UnstyledButton } from "@mantine/core";
import { useSettings } from "../../app/use-setting.js";
import type { Transferred } from "../../engine/protocol.js";
import { count } from "../../shared/words.js";
import { Differences } from "./Differences.js";
import { TakeAlong } from "./TakeAlong.js";

type Step = Transferred["steps"][number];
type Verdict = Step["verdict"];

/** What stops first. */
const VERDICTS: readonly { readonly verdict: Verdict; readonly words: string; readonly tone: string }[] = [
	{ verdict: "not here", words: "cannot be done there", tone: "stop" },
	{ verdict: "decide", words: "need a decision", tone: "warn" },
	{ verdict: "applies", words: "apply as they are", tone: "note" },
];

interface TravelledProps {
	readonly found: Transferred;
	readonly name: string;
	/** Id of the other car's job; empty: it is none. */
	readonly to: string;
}

export function Travelled({ found, name, to }: TravelledProps) {
	const [query, set] = useSettings();
	const chosen = query.get("verdict") ?? "";
	const { steps, left, differences } = found;
	const shown = VERDICTS.filter(({ verdict }) =>
		chosen === "" ? verdict !== "applies" : verdict === chosen,
	);
	const of = (verdict: Verdict) => steps.filter((step) => step.verdict === verdict);
	return (
		<>
			<h2>On {name}</h2>
			<fieldset className="fares" aria-label="Which steps are shown">
				{VERDICTS.map(({ verdict, words, tone }) => (
					<UnstyledButton
						key={verdict}
						className="fare"
						data-tone={tone}
						aria-pressed={verdict === chosen}
						onClick={() => set({ verdict: verdict === chosen ? "" : verdict })}
					>
						<strong>{of(verdict).length}</strong>
						<span>{words}</span>
					</UnstyledButton>
				))}
			</fieldset>
			<p className="soft">of {count(steps.length, "step")}</p>
			{left.length > 0 && (
				<p className="notice" data-tone="warn">
					{count(left.length, "wire")} would be left with a bare end there: {left.join(", ")}. They need steps
					of their own.
				</p>
			)}
			{shown.map(
				({ verdict, words, tone }) =>
					of(verdict).length > 0 && (
						<section key={verdict} className="stack">
							<h3 className="cap">{words}</h3>
							<ol className="steps travelled">
								{of(verdict).map((step) => (
									<TravelledStep key={step.step.row} step={step} tone={tone} />
								))}
							</ol>
						</section>
					),
			)}
			<TakeAlong files={found.files} name={name} to={to} />
			<Differences differences={differences} />
		</>
	);
}

function TravelledStep({ step: { step, reasons }, tone }: { step: Step; tone: string }) {
	return (
		<li className="travelled-step" data-tone={tone}>
			<span className="step-number mono">{step.step}</span>
			<div className="stack">
				<strong className="cap">{step.title || step.kind}</strong>
				<span className="soft">
					{step.kind}
					{step.place && `, ${step.place}`}
				</span>
				{reasons.map(({ kind, subject, was, is, text }) => (
					<p key={kind + text} className="reason">
						<span className="tag" data-tone={tone}>
							{kind}
						</span>
						{was !== "" && is !== "" ? (
							<span>
								<span className="mono">{subject}</span>: {was} <span className="arrow">→</span>{" "}
								<strong>{is}</strong>
							</span>
						) : (
							<span>{text}</span>
						)}
					</p>
				))}
			</div>
		</li>
	);
}
