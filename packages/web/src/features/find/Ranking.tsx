/** The faults that explain what was seen, most probable first, with the sound loom among them. */
import type { Found, Question, RankedFault } from "@loomwright/engine";
import { UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { count, percent } from "../../shared/words.js";
import { FaultDetail } from "./FaultDetail.js";
import type { Case } from "./use-case.js";

const SHOWN = 6;

interface RankingProps {
	readonly found: Found;
	readonly shown: Case;
	/** Takes a reading instead of the one proposed. */
	readonly onChoose: (question: Question) => void;
}

export function Ranking({ found, shown, onChoose }: RankingProps) {
	const [open, setOpen] = useState("");
	const [all, setAll] = useState(false);
	const faults = all ? found.faults : found.faults.slice(0, SHOWN);
	const { singles, common, pairs } = found.considered;
	return (
		<section className="card stack" aria-label="Faults, most probable first">
			<h2>What explains it</h2>
			<p className="soft">
				Weighed: {count(singles, "single fault")}, {count(common, "common cause")}, {count(pairs, "pair")}.
				Nothing is ruled out for good.
			</p>
			<ol className="ranking">
				{faults.map((fault) => (
					<li key={fault.id}>
						<Bar
							words={fault.where}
							kind={fault.kind}
							share={fault.posterior}
							open={open === fault.id}
							onOpen={() => setOpen(open === fault.id ? "" : fault.id)}
						/>
						{open === fault.id && (
							<FaultDetail
								found={found}
								fault={fault}
								shown={shown}
								alike={alikeWords(fault, found)}
								onChoose={onChoose}
							/>
						)}
					</li>
				))}
			</ol>
			<div className="sound-row">
				<span>The loom is sound</span>
				<span className="share-number">{percent(found.sound)}</span>
			</div>
			{found.faults.length > SHOWN && (
				<UnstyledButton className="row" onClick={() => setAll(!all)}>
					<strong>{all ? "Show fewer" : `Show all ${found.faults.length} listed`}</strong>
				</UnstyledButton>
			)}
		</section>
	);
}

interface BarProps {
	readonly words: string;
	readonly kind: string;
	readonly share: number;
	readonly open: boolean;
	readonly onOpen: () => void;
}

const Bar = ({ words, kind, share, open, onOpen }: BarProps) => (
	<UnstyledButton className="ranking-row" aria-expanded={open} onClick={onOpen}>
		<span className="ranking-words">
			<strong className="cap">{words}</strong>
			<span className="soft">{kind}</span>
		</span>
		<span className="ranking-number">{percent(share)}</span>
		<span className="share-bar" aria-hidden="true">
			<span style={{ width: `${100 * share}%` }} />
		</span>
	</UnstyledButton>
);

/** Faults that cannot be told from this one, by where they are; those not listed by their id. */
function alikeWords(fault: RankedFault, found: Found): string[] {
	return fault.alike.map((id) => found.faults.find((other) => other.id === id)?.where ?? id);
}
